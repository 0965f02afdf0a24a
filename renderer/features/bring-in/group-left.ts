import type { Problem } from '../../../src-core/contract/problem.ts';
import { groupBy } from '../../../src-core/platform/group-by.ts';

/** Problems of one kind: the first few, and how many more there are. */
export interface LeftGroup {
  readonly shown: readonly Problem[];
  readonly more: number;
}

/** How many of a kind are named one by one. */
const NAMED = 2;

/** What was left where it lay, by kind. Files that are no clips, and hidden ones, ask nothing of the teacher. */
export function groupLeft(problems: readonly Problem[]): readonly LeftGroup[] {
  const asking = problems.filter(({ code }) => code !== 'file-not-a-clip');
  return [...groupBy(asking, ({ code }) => code).values()].map((alike) => ({
    shown: alike.slice(0, NAMED),
    more: Math.max(0, alike.length - NAMED),
  }));
}
