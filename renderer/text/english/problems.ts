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
  return word(hideFiles(problem, names), names);
}

/** Problems whose paths are of the squads' files, not of the plan or of the program's own. */
const OF_FILES: Readonly<Record<string, unknown>> = { ...clipsProblems, 'upload-differs': true };

function hideFiles(problem: Problem, { file }: Names): Problem {
  if (!file || !(problem.code in OF_FILES)) return problem;
  const { path, paths } = problem as { readonly path?: string; readonly paths?: readonly string[] };
  return {
    ...problem,
    ...(path !== undefined && { path: file(path) }),
    ...(paths !== undefined && { paths: paths.map(file) }),
  } as Problem;
}
