import type { CardSearchProblem } from './card-search-problem.ts';

/** Why a clip's evidence is missing or not whole. */
export type EvidenceProblem =
  | CardSearchProblem
  /** The analysis itself broke off: a bug or too little memory. Only this clip is touched. */
  | { readonly code: 'analysis-failed'; readonly detail: string };

/** Whether the clip itself is at fault, so that the same would come again; all else may be better another time. */
export function isLasting({ code }: EvidenceProblem): boolean {
  return code === 'decode-failed' || code === 'decode-cut-short';
}
