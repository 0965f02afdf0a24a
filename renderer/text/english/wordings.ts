import type { Problem, ProblemOf } from '../../../src-core/contract/problem.ts';
import type { Advice, Names } from '../names.ts';

/** One wording for each problem of a set; a code without words fails the build. */
export type Wordings<Code extends Problem['code']> = {
  readonly [Each in Code]: (problem: ProblemOf<Each>, names: Names) => Advice;
};
