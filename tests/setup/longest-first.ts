import path from 'node:path';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** What is quickest to tell that something is broken comes first. */
const PROJECTS = ['architecture', 'unit', 'app'];

/** Files that take longest, the longest first, as measured on two cores on 2026-11-29. */
const LONGEST = [
  'decode-clip',
  'sample-frames',
  'read-cards',
  'files-over-wires',
  'loopback-security',
  'planning-over-wires',
  'window-kill',
  'reps-sweep',
  'screens.window',
  'journal-kill',
  'review.window',
  'department',
  'full-lesson.window',
  'cli',
  'plan.window',
  'demo-film',
  'bring-in.window',
  'grade-paper',
  'paper-codes',
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
