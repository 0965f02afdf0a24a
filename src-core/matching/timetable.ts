import type { SlotIndex } from '../lesson/plan.ts';
import type { EpochMs } from '../platform/units.ts';
import { findHeaviestIncrease } from './increasing-subsequence.ts';
import { FEWEST_PACE_SPANS, TIME_SLACK_SECONDS } from './matching-costs.ts';
import type { PlacedClip } from './observation.ts';
import type { WalkClip } from './walk-clip.ts';

/** What the times of a squad's known clips tell of its pace. Only differences count, so a wrong clock does no harm. */
export interface Timetable {
  /** From start to start as a share of the time the squad usually takes per slot; null where that cannot be told. */
  readonly findGapShare: (earlier: PlacedClip, later: PlacedClip) => number | null;
  /** How far from its slot's due time a clip was filmed, in slots, 0 to 1 (or more); 0 where that cannot be told. */
  readonly getLateness: (clip: PlacedClip, slot: SlotIndex) => number;
}

interface Anchor {
  readonly slot: SlotIndex;
  readonly startMs: EpochMs;
}

/**
 * Reads the pace off the clips that are sure: station known, filmed once, in order and with a usable time.
 * A slot's due time is taken from the nearest sure slot on either side at that pace; where both exist, the
 * lateness is the mean of the two.
 */
export function buildTimetable(
  rows: readonly WalkClip[],
  takes: readonly (readonly WalkClip[])[],
): Timetable {
  const leastDoubt = Math.min(...rows.map((clip) => clip.placed.uncertaintySeconds));
  const findTime = ({ startMs, uncertaintySeconds, hasOrder }: PlacedClip): EpochMs | null =>
    hasOrder && uncertaintySeconds <= leastDoubt + TIME_SLACK_SECONDS ? startMs : null;
  const anchors = findAnchors(rows, takes, findTime);
  const paceMs = findPace(anchors);

  return {
    findGapShare: (earlier, later) => {
      const from = findTime(earlier);
      const to = findTime(later);
      return paceMs === null || from === null || to === null || to < from ? null : (to - from) / paceMs;
    },
    getLateness: (clip, slot) => {
      const time = findTime(clip);
      if (paceMs === null || time === null) return 0;
      const near = [
        anchors.findLast((anchor) => anchor.slot < slot),
        anchors.find((anchor) => anchor.slot > slot),
      ];
      const distances = near
        .filter((anchor) => anchor !== undefined)
        .map((anchor) => Math.abs(time - anchor.startMs - (slot - anchor.slot) * paceMs) / paceMs);
      return Math.min(
        1,
        distances.reduce((sum, distance) => sum + distance, 0) / Math.max(1, distances.length),
      );
    },
  };
}

function findAnchors(
  rows: readonly WalkClip[],
  takes: readonly (readonly WalkClip[])[],
  findTime: (clip: PlacedClip) => EpochMs | null,
): Anchor[] {
  const sure = rows.flatMap(({ placed, ownSlot }): Anchor[] => {
    const startMs = findTime(placed);
    return ownSlot !== null && startMs !== null && takes[ownSlot]?.length === 1
      ? [{ slot: ownSlot, startMs }]
      : [];
  });
  const inOrder = findHeaviestIncrease(sure.map(({ slot }) => ({ value: slot, weight: 1 })));
  return inOrder.kept.flatMap((position) => sure[position] ?? []);
}

/** Median milliseconds per slot over the spans between neighbouring anchors; null where too few rise. */
function findPace(anchors: readonly Anchor[]): number | null {
  const paces = anchors
    .flatMap((anchor, position) => {
      const next = anchors[position + 1];
      return next === undefined ? [] : [(next.startMs - anchor.startMs) / (next.slot - anchor.slot)];
    })
    .filter((pace) => pace > 0)
    .toSorted((one, other) => one - other);
  return paces.length < FEWEST_PACE_SPANS ? null : (paces[Math.floor((paces.length - 1) / 2)] ?? null);
}
