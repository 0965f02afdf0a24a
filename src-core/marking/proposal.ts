import type { ExerciseReason } from './propose-exercise.ts';
import type { PlaceReason } from './propose-place.ts';
import type { RepsReason } from './propose-reps.ts';
import type { TogetherReason } from './propose-together.ts';

/** What the machine suggests for one criterion of one clip; never a mark until the teacher confirms it. */
export interface Proposal {
  /** Code of a clip criterion of the rubric. */
  readonly criterion: string;
  readonly met: boolean;
  /** How sure, 0 to 1. It never changes what a proposal counts for. */
  readonly confidence: number;
  /** Why, as a code with its facts, worded by the faces. */
  readonly reason: ProposalReason;
}

/** Everything that can be given as a reason for a proposal. */
export type ProposalReason = PlaceReason | ExerciseReason | RepsReason | TogetherReason;

/** Every code that a proposal's reason can have. */
export type ReasonCode = ProposalReason['code'];

/** The reason with this code. */
export type ReasonOf<Code extends ReasonCode> = Extract<ProposalReason, { code: Code }>;
