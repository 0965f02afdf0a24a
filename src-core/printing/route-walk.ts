import type { Plan, SlotIndex, StationCode } from '../lesson/plan.ts';
import type { SquadScore } from '../marking/points.ts';
import type { EpochMs } from '../platform/units.ts';
import type { SheetClip } from './grade-input.ts';

/** A squad's route as expected beside the same as filmed. */
export interface RouteWalk {
  /** In the route's order. */
  readonly expected: readonly { readonly station: StationCode; readonly hasClip: boolean }[];
  /** In the order of filming; a retake and a clip of no slot stand among the others. */
  readonly walked: readonly WalkedStop[];
}

/** One clip of a walk. */
export interface WalkedStop {
  /** Where it was filmed; null where nobody knows. */
  readonly station: StationCode | null;
  /** The slot that it fills; null where it fills none, as a retake does. */
  readonly slot: SlotIndex | null;
  /** Against the route: out of order and not cleared, or at the wrong place. */
  readonly isBroken: boolean;
  readonly startMs: EpochMs | null;
}

/** The slot that a clip fills, counting or at the wrong place; null for all others. */
export function findFilledSlot({ assignment: { role, slot } }: SheetClip): SlotIndex | null {
  return role === 'counts' || role === 'wrong-place' ? slot : null;
}

/** The walk of one squad of the plan; `score` is the squad's own. */
export function buildRouteWalk(plan: Plan, score: SquadScore, clips: readonly SheetClip[]): RouteWalk {
  const route = plan.squads.find(({ code }) => code === score.squad)?.route ?? [];
  const broken = new Set(score.slots.filter(({ order }) => order.broken).map(({ slot }) => slot));
  const filled = new Set(clips.map(findFilledSlot));
  return {
    expected: route.map((station, slot) => ({ station, hasClip: filled.has(slot) })),
    walked: clips.map((clip) => {
      const slot = findFilledSlot(clip);
      const { role, station } = clip.assignment;
      const isBroken = slot !== null && (broken.has(slot) || role === 'wrong-place');
      return { station, slot, isBroken, startMs: clip.startMs };
    }),
  };
}
