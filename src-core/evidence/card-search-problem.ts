import type { DecodeProblem } from './decode-problem.ts';

/** Why a clip could not be searched for codes, or not all of it. */
export type CardSearchProblem =
  | DecodeProblem
  /** The reader of codes could not be started: a damaged installation. */
  | { readonly code: 'card-reader-failed'; readonly detail: string };
