import path from 'node:path';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** Files of the projects `app` and `window` that take longest, the longest first, as measured on two cores on 2026-11-28. */
const LONGEST = [
  'window-kill',
  'reps-sweep',
  'journal-kill',
  'department',
  'cli',
  'cli-marking',
  'reps-footage',
  'paper-codes',
  'demo-film',
  'cli-evidence',
  'demo-evidence',
  'start',
  'screens.window',
  'full-lesson.window',
  'review.window',
  'plan.window',
  'bring-in.window',
];

/** Begins what takes long, so that no file is left to run alone at the end; a clone that has never run goes by size alone. */
export class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const sorted = await super.sort(files);
    return sorted.sort((one, other) => getRank(one) - getRank(other));
  }
}

function getRank({ moduleId }: TestSpecification): number {
  const at = LONGEST.indexOf(path.basename(moduleId, '.test.ts'));
  return at < 0 ? LONGEST.length : at;
}
