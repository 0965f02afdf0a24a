import type { UnisonFinding, UnisonLane } from '../evidence/unison-finding.ts';
import type { Seconds } from '../platform/units.ts';

/** Why a group is taken to move together, or not; worded by the faces. Lanes count from 1, left to right. */
export type TogetherReason =
  | { readonly code: 'moves-together'; readonly lanes: number; readonly lagSeconds: Seconds }
  | { readonly code: 'alternates'; readonly lanes: number }
  | {
      readonly code: 'lane-misses-reps';
      readonly lane: number;
      readonly lanes: number;
      readonly reps: number;
      readonly of: number;
    }
  | {
      readonly code: 'lane-off-beat';
      readonly lane: number;
      readonly lanes: number;
      /** Behind the group; negative is ahead. */
      readonly lagSeconds: Seconds;
    }
  | { readonly code: 'lanes-unseen'; readonly missing: number };

/** A suggestion about the unison of one clip. */
export interface TogetherProposal {
  readonly met: boolean;
  readonly confidence: number;
  readonly reason: TogetherReason;
}

/** A lane may miss one rep. */
const MAY_MISS = 1;

/** A lag this near the tolerance may lie on either side of it: twice the error on filmed lags. */
const NEAR_SECONDS = 0.1;

/** Judgement, not measured: lanes hide behind each other. */
const CONFIDENCE = { clear: 0.85, near: 0.55, unseen: 0.5 } as const;

/**
 * Whether a group moved together. By turns or half and half is named for what it is and not proposed as together.
 *
 * @param toleranceSeconds the plan's largest lag that still counts as together
 */
export function proposeTogether(unison: UnisonFinding, toleranceSeconds: Seconds): TogetherProposal {
  const { lanes, missingLanes, together, alternating, repCount } = unison;
  const worst = findWorst(lanes, (lane) => Math.abs(lane.lagSeconds));
  const isNear = Math.abs(Math.abs(worst?.lagSeconds ?? 0) - toleranceSeconds) < NEAR_SECONDS;
  const confidence = isNear ? CONFIDENCE.near : CONFIDENCE.clear;
  if (missingLanes > 0) {
    return {
      met: false,
      confidence: CONFIDENCE.unseen,
      reason: { code: 'lanes-unseen', missing: missingLanes },
    };
  }
  if (alternating) return { met: false, confidence, reason: { code: 'alternates', lanes: lanes.length } };
  const lagSeconds = worst?.lagSeconds ?? 0;
  if (together) {
    return { met: true, confidence, reason: { code: 'moves-together', lanes: lanes.length, lagSeconds } };
  }
  const idle = findWorst(lanes, ({ reps }) => repCount - reps);
  if (idle && repCount - idle.reps > MAY_MISS) {
    const reason = {
      code: 'lane-misses-reps',
      lane: lanes.indexOf(idle) + 1,
      lanes: lanes.length,
      reps: idle.reps,
      of: repCount,
    } as const;
    return { met: false, confidence: CONFIDENCE.clear, reason };
  }
  const lane = worst ? lanes.indexOf(worst) + 1 : 1;
  return { met: false, confidence, reason: { code: 'lane-off-beat', lane, lanes: lanes.length, lagSeconds } };
}

function findWorst(lanes: readonly UnisonLane[], measure: (lane: UnisonLane) => number): UnisonLane | null {
  return lanes.reduce<UnisonLane | null>(
    (worst, lane) => (worst === null || measure(lane) > measure(worst) ? lane : worst),
    null,
  );
}
