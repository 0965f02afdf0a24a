import type { UnisonFinding, UnisonLane } from '../evidence/unison-finding.ts';
import type { Seconds } from '../platform/units.ts';

/** Why a group is taken to move together, or not; worded by the faces. Lanes count from 1, left to right. */
export type TogetherReason =
  | { readonly code: 'moves-together'; readonly lanes: number; readonly lagSeconds: Seconds }
  | {
      readonly code: 'some-move-together';
      readonly lanes: number;
      /** Pupils who should be seen. */
      readonly of: number;
      readonly lagSeconds: Seconds;
    }
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

/** A lag this near the reach may lie on either side of it: twice the error on filmed lags. */
const NEAR_SECONDS = 0.1;

/**
 * Judgement, not measured: lanes hide behind each other. `some` is: of filmed groups found together with fewer lanes than
 * performers (the unison bench's seeds 1, 3, 5 and 6) 26 of 37 were, of those with as many 154 of 161.
 */
const CONFIDENCE = { clear: 0.85, some: 0.7, near: 0.55, unseen: 0.5 } as const;

/**
 * Whether a group moved together. By turns or half and half is named for what it is and not proposed as together. Where
 * fewer are seen than should be (`pupils`; null: not known), who is hidden may be the one who does not keep up.
 */
export function proposeTogether(unison: UnisonFinding, pupils: number | null): TogetherProposal {
  const { lanes, missingLanes, together, alternating, repCount } = unison;
  if (missingLanes > 0) {
    const reason = { code: 'lanes-unseen', missing: missingLanes } as const;
    return { met: false, confidence: CONFIDENCE.unseen, reason };
  }
  if (alternating) {
    return { met: false, confidence: CONFIDENCE.clear, reason: { code: 'alternates', lanes: lanes.length } };
  }
  if (together) return praise(unison, pupils);
  const idle = findMost(lanes, ({ fault, reps }) => (fault === 'misses-reps' ? repCount - reps : 0));
  if (!idle) return blame(unison);
  const reason = {
    code: 'lane-misses-reps',
    lane: lanes.indexOf(idle) + 1,
    lanes: lanes.length,
    reps: idle.reps,
    of: repCount,
  } as const;
  return { met: false, confidence: CONFIDENCE.clear, reason };
}

function praise({ lanes, reachSeconds }: UnisonFinding, pupils: number | null): TogetherProposal {
  const lags = lanes.map((lane) => findMedian(listLags(lane)));
  const lagSeconds = lags.reduce((most, lag) => (Math.abs(lag) > Math.abs(most) ? lag : most), 0);
  const confidence = getConfidence(lagSeconds, reachSeconds);
  const seen = { lanes: lanes.length, lagSeconds };
  if (pupils === null || pupils <= lanes.length) {
    return { met: true, confidence, reason: { code: 'moves-together', ...seen } };
  }
  const reason = { code: 'some-move-together', ...seen, of: pupils } as const;
  return { met: true, confidence: Math.min(confidence, CONFIDENCE.some), reason };
}

/** Names the lane with most reps out of reach, and how far out these are. */
function blame({ lanes, reachSeconds }: UnisonFinding): TogetherProposal {
  const listOutside = (lane: UnisonLane) => listLags(lane).filter((lag) => Math.abs(lag) > reachSeconds);
  const worst = findMost(lanes, (lane) => listOutside(lane).length);
  const lagSeconds = worst ? findMedian(listOutside(worst)) : 0;
  const reason = {
    code: 'lane-off-beat',
    lane: worst ? lanes.indexOf(worst) + 1 : 1,
    lanes: lanes.length,
    lagSeconds,
  } as const;
  return { met: false, confidence: getConfidence(lagSeconds, reachSeconds), reason };
}

function listLags({ repLagsSeconds }: UnisonLane): Seconds[] {
  return repLagsSeconds.filter((lag) => lag !== null);
}

/** One of the values themselves, so that a lane now ahead and now behind is not said to be level. */
function findMedian(values: readonly number[]): number {
  return values.toSorted((one, other) => one - other)[values.length >> 1] ?? 0;
}

function getConfidence(lagSeconds: Seconds, reachSeconds: Seconds): number {
  const isNear = Math.abs(Math.abs(lagSeconds) - reachSeconds) < NEAR_SECONDS;
  return isNear ? CONFIDENCE.near : CONFIDENCE.clear;
}

/** The first lane of which there is most; null where there is nothing of any. */
function findMost(lanes: readonly UnisonLane[], measure: (lane: UnisonLane) => number): UnisonLane | null {
  const most = Math.max(...lanes.map(measure));
  return most > 0 ? (lanes.find((lane) => measure(lane) === most) ?? null) : null;
}
