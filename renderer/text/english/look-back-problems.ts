import type { LookBackProblem, OpenProblem } from '../../../src-core/contract/problem.ts';
import type { StorageProblem } from '../../../src-core/platform/storage-problem.ts';
import type { Advice, Names } from '../names.ts';
import { list } from './amounts.ts';
import { lessonProblems } from './lesson-problems.ts';
import { recordProblems } from './record-problems.ts';
import type { Wordings } from './wordings.ts';

const openProblems: Wordings<OpenProblem['code']> = { ...lessonProblems, ...recordProblems };

/** Words for what looking back cannot show. */
export const lookBackProblems: Wordings<Exclude<LookBackProblem, StorageProblem>['code']> = {
  'no-lessons-found': ({ paths }) => ({
    what: `There is no lesson in or below ${list(paths)}.`,
    todo: 'Choose the folder that your lessons’ folders lie in; each of those holds a plan.json.',
  }),
  'lesson-left-out': ({ path, because }, names) => {
    const word = openProblems[because.code] as (problem: OpenProblem, names: Names) => Advice;
    const { what, todo } = word(because, names);
    return { what: `${path} could not be added up: ${what}`, todo };
  },
};
