/** What the machine suggests for one criterion of one clip; never a mark until the teacher confirms it. */
export interface Proposal {
  /** Code of a clip criterion of the rubric. */
  readonly criterion: string;
  readonly met: boolean;
  /** How sure, 0 to 1. It never changes what a proposal counts for. */
  readonly confidence: number;
  /** Why, as a code with its facts, worded by the faces. */
  readonly reason: { readonly code: string };
}
