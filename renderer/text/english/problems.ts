import type { Problem } from '../../../src-core/contract/problem.ts';
import type { Advice, Names } from '../names.ts';
import { archiveProblems } from './archive.ts';
import { bundleProblems } from './bundle-problems.ts';
import { callProblems } from './call-problems.ts';
import { clipsProblems } from './clips-problems.ts';
import { lessonProblems } from './lesson-problems.ts';
import { lookBackProblems } from './look-back-problems.ts';
import { looseEnds } from './loose-ends.ts';
import { planningProblems } from './planning-problems.ts';
import { printProblems } from './print-problems.ts';
import { queueProblems } from './queue-problems.ts';
import { recordProblems } from './record-problems.ts';
import type { Wordings } from './wordings.ts';

const WORDINGS: Wordings<Problem['code']> = {
  ...lessonProblems,
  ...looseEnds,
  ...planningProblems,
  ...clipsProblems,
  ...recordProblems,
  ...printProblems,
  ...bundleProblems,
  ...queueProblems,
  ...lookBackProblems,
  ...archiveProblems,
  ...callProblems,
};

/** What happened and what to do about it, for any problem of any stage. */
export function describeProblem(problem: Problem, names: Names): Advice {
  const word = WORDINGS[problem.code] as (problem: Problem, names: Names) => Advice;
  return word(problem, names);
}
