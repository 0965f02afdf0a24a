import type { StationCode } from '../lesson/plan.ts';
import type { ClipId } from '../matching/observation.ts';

/** What kept something off the paper. */
export type PrintProblem =
  /** Words that do not fit their place even in the smallest type that can be read; the page was left out. */
  | { readonly code: 'print-text-too-long'; readonly field: string; readonly text: string }
  /** The fonts lack letters of these words; a line to write on stands in their place. */
  | { readonly code: 'print-letters-missing'; readonly field: string; readonly letters: string }
  /** A squad walks to a station that no clue leads to; there is no slip for it. */
  | { readonly code: 'print-clue-missing'; readonly station: StationCode }
  /** The lesson folder has no such reference photo, or it is no picture; its place on the answer key is left empty. */
  | { readonly code: 'print-photo-missing'; readonly station: StationCode; readonly path: string }
  /** Stills of this clip that should stand on the sheet could not be cut or blurred; their places are left empty. */
  | { readonly code: 'print-stills-missing'; readonly clip: ClipId }
  /** Of all that was asked for, not one page could be laid out. */
  | { readonly code: 'print-empty' };
