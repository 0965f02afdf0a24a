import type { SlotIndex } from '../lesson/plan.ts';
import type { ClipAssignment } from './assignment.ts';
import { explainWalk } from './explain-walk.ts';
import type { Flag } from './flag.ts';
import { findHeaviestIncrease } from './increasing-subsequence.ts';
import { measureOrder, type OrderMeasures } from './order-measures.ts';
import { raiseFlags } from './raise-flags.ts';
import { listEmptySlots, type SettledClip, settleClips } from './settle-clips.ts';
import { buildWalk, type SquadClips, type Walk } from './walk.ts';
import type { WalkClip } from './walk-clip.ts';

/** A squad's clips held against its route. Everything in it is a proposal. */
export interface SquadMatch {
  /** One per clip, in the order given. */
  readonly assignments: readonly ClipAssignment[];
  /** Slots with neither a counting clip nor a wrong place in their time; each has a missing flag. */
  readonly missing: readonly SlotIndex[];
  /** By clip in the order given, then by missing slot. */
  readonly flags: readonly Flag[];
  /** Over the counting clips that have an order. */
  readonly order: OrderMeasures;
}

/**
 * Places a squad's clips in its route and says what the teacher must look at.
 *
 * 1. A known station or the teacher's slot settles a clip, wherever in time it was filmed.
 * 2. The cheapest explanation by `matching-costs.ts` guesses the rest: unknown clips in the order of the walk,
 *    retakes, wrong places, extras.
 * 3. Where the next best explanation is too near, the clip stays unplaced, with both named.
 * 4. Out of order is the smallest set of counting clips whose removal leaves order; of several such sets one with
 *    fewer guessed clips, then the one filmed earliest. Clips without order are never in it.
 */
export function matchSquad(input: SquadClips): SquadMatch {
  const walk = buildWalk(input);
  const settled = settleClips(walk, explainWalk(walk));
  const walked = settled
    .filter(({ role, clip }) => role === 'counts' && clip.row !== null)
    .toSorted((one, other) => (one.clip.row ?? 0) - (other.clip.row ?? 0));
  const outOfOrder = findOutOfOrder(walked);
  const missing = listEmptySlots(walk, settled);
  return {
    assignments: settled.map((one) => describe(walk, one, !outOfOrder.has(one.clip))),
    missing,
    flags: raiseFlags({ squad: input.squad, walk, settled, outOfOrder, missing }),
    order: measureOrder(walked.map(({ slot }) => slot ?? 0)),
  };
}

/**
 * A known clip weighs one more than the number of clips, a guessed one a unit more than that: the units never add
 * up to a clip, so the set stays the smallest, and a guess is accused only where no other smallest set exists.
 */
function findOutOfOrder(walked: readonly SettledClip[]): ReadonlySet<WalkClip> {
  const items = walked.map(({ slot, clip }) => ({
    value: slot ?? 0,
    weight: walked.length + 1 + (clip.ownSlot === null ? 1 : 0),
  }));
  return new Set(findHeaviestIncrease(items).dropped.flatMap((position) => walked[position]?.clip ?? []));
}

function describe(walk: Walk, { clip, role, slot }: SettledClip, inOrder: boolean): ClipAssignment {
  const { observation } = clip.placed;
  const base = { clip: clip.placed.clip, role, slot, inOrder };
  if (observation.known) return { ...base, station: observation.station, stationFrom: observation.from };
  const station = slot === null ? null : (walk.route[slot] ?? null);
  if (station === null) return { ...base, station, stationFrom: null };
  return { ...base, station, stationFrom: clip.slotIsFinal ? 'teacher' : 'inferred' };
}
