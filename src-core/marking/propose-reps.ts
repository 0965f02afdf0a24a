import type { RepsFinding } from '../evidence/reps-finding.ts';

/** Why the full reps are taken to be there, or not; worded by the faces. */
export type RepsReason =
  | { readonly code: 'reps-counted'; readonly count: number; readonly prescribed: number }
  | { readonly code: 'reps-short'; readonly count: number; readonly prescribed: number }
  | { readonly code: 'no-reps-seen'; readonly prescribed: number };

/** A suggestion about the reps of one clip. */
export interface RepsProposal {
  readonly met: boolean;
  readonly confidence: number;
  readonly reason: RepsReason;
}

/** One rep more or less would turn the answer: a count is right within one far more often than to the rep. */
const NEAR_EDGE = { reps: 1, trust: 0.6 } as const;

/** Counting is never as sure as a card that was read. Judgement, not measured. */
const MOST_CONFIDENCE = 0.95;

/** Whether a clip shows the prescribed reps. The count was made without knowing them. */
export function proposeReps(
  { count, confidence }: Pick<RepsFinding, 'count' | 'confidence'>,
  prescribed: number,
): RepsProposal {
  const trust = Math.min(MOST_CONFIDENCE, confidence);
  if (count === null) return { met: false, confidence: trust, reason: { code: 'no-reps-seen', prescribed } };
  const met = count >= prescribed;
  const turns = met ? count - prescribed < NEAR_EDGE.reps : prescribed - count <= NEAR_EDGE.reps;
  return {
    met,
    confidence: trust * (turns ? NEAR_EDGE.trust : 1),
    reason: { code: met ? 'reps-counted' : 'reps-short', count, prescribed },
  };
}
