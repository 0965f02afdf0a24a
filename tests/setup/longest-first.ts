import path from 'node:path';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** What is quickest to tell that something is broken comes first. */
const PROJECTS = ['architecture', 'unit', 'app'];

/**
 * Files that take longest, the longest first, as measured on two cores on 2026-11-29; of near ones those beside each
 * other that work and that wait.
 */
const LONGEST = [
  'decode-clip',
  'read-cards',
  'files-over-wires',
  'watch-clip',
  'watching',
  'planned-lesson',
  'sample-frames',
  'interrupted',
  'card-reader',
  'loopback-security',
  'planning-over-wires',
  'full-lesson.window',
  'window-kill',
  'reps-sweep',
  'bring-in.window',
  'journal-kill',
  'demo-film',
  'screens.window',
  'department',
  'grade-paper',
  'review.window',
  'cli',
  'paper-codes',
  'plan.window',
  'reps-footage',
  'cli-evidence',
  'cli-marking',
  'hurried-teacher',
  'demo-evidence',
  'print-pack',
  'cli-look-after',
  'planning-cli',
  'start',
];

/** Begins what takes long, so that no file is left to run alone at the end; a clone that has never run goes by size alone. */
export class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const sorted = await super.sort(files);
    return sorted.sort((one, other) => getRank(one) - getRank(other));
  }
}

/** Projects one after another, so that a worker keeps the modules that it has loaded. */
function getRank({ moduleId, project }: TestSpecification): number {
  const at = LONGEST.indexOf(path.basename(moduleId, '.test.ts'));
  return PROJECTS.indexOf(project.name) * (LONGEST.length + 1) + (at < 0 ? LONGEST.length : at);
}
