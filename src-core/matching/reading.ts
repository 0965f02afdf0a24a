import type { SlotIndex } from '../lesson/plan.ts';
import { matchingCosts, RETAKE_GAP_SHARES } from './matching-costs.ts';
import type { Observation } from './observation.ts';
import { isOpen, type Walk } from './walk.ts';
import type { WalkClip } from './walk-clip.ts';

/** One way to read one clip, and what reading it so costs. */
export interface Reading {
  readonly role: 'counts' | 'retake' | 'wrong-place' | 'extra';
  /** The slot it was filmed at, or whose time a wrong-place clip fills; null for an extra. */
  readonly slot: SlotIndex | null;
  readonly cost: number;
}

/** Per slot, which of its settled takes counts; null for an open slot. */
export type Homes = readonly (WalkClip | null)[];

/** How a clip may be read as one that fills the slot in the order of the walk; null where it may not. */
export function findReadingInWalk(walk: Walk, homes: Homes, clip: WalkClip, slot: SlotIndex): Reading | null {
  const { ownSlot } = clip;
  if (ownSlot !== null && homes[ownSlot] === clip)
    return ownSlot === slot ? { role: 'counts', slot, cost: 0 } : null;
  if (clip.slotIsFinal || !isOpen(walk, slot)) return null;
  if (clip.station === walk.route[slot]) return { role: 'counts', slot, cost: 0 }; // a route that comes back
  const offPace = matchingCosts.offPace * walk.timetable.getLateness(clip.placed, slot);
  if (clip.station !== null) return { role: 'wrong-place', slot, cost: matchingCosts.wrongPlace + offPace };
  return { role: 'counts', slot, cost: matchingCosts.inferred + offPace + weighLooks(walk, clip, slot) };
}

/**
 * How a clip may be read as one that moves the walk no further, once the slots before `passed` lie behind:
 * out of order, a retake, an extra.
 */
export function listReadingsBeside(walk: Walk, homes: Homes, clip: WalkClip, passed: number): Reading[] {
  const { ownSlot } = clip;
  if (ownSlot !== null) {
    const home = homes[ownSlot] ?? null;
    if (home === clip) return [{ role: 'counts', slot: ownSlot, cost: matchingCosts.outOfOrder }];
    const cost = home === null ? Number.POSITIVE_INFINITY : priceKnownRetake(walk, clip, home);
    return [{ role: 'retake', slot: ownSlot, cost }];
  }
  const extra: Reading = { role: 'extra', slot: null, cost: matchingCosts.extra };
  return clip.station === null ? [...listGuessedRetakes(walk, clip, passed), extra] : [extra];
}

/**
 * A second take of a known station. Filmed at one go, the plan's rule binds (Infinity on the side that should
 * have counted) and the gap to the neighbouring take sets the price; after other stations, the squad came back.
 */
function priceKnownRetake(walk: Walk, clip: WalkClip, home: WalkClip): number {
  if (clip.row === null || home.row === null) return matchingCosts.retakeUntimed;
  const beatsHome = !home.slotIsFinal && (walk.retake === 'last') === clip.row > home.row;
  if (hasReturned(walk, clip.ownSlot, [clip, home])) {
    return matchingCosts.retakeReturned + (beatsHome ? matchingCosts.againstRule : 0);
  }
  if (beatsHome) return Number.POSITIVE_INFINITY;
  const others = walk.rows.filter((other) => other.ownSlot === clip.ownSlot);
  const neighbour = others[others.indexOf(clip) + (clip.row < home.row ? 1 : -1)] ?? home;
  return priceGap(walk, clip, neighbour);
}

/** True where the squad filmed another known station between two takes of the slot. */
export function hasReturned(
  walk: Walk,
  slot: SlotIndex | null,
  takes: readonly [WalkClip, WalkClip],
): boolean {
  const [one, other] = takes;
  if (one.row === null || other.row === null) return false;
  const between = walk.rows.slice(Math.min(one.row, other.row) + 1, Math.max(one.row, other.row));
  return between.some((clip) => isSettled(clip) && clip.ownSlot !== slot);
}

function isSettled(clip: WalkClip): boolean {
  return clip.station !== null || clip.slotIsFinal;
}

/**
 * A guess that the clip is one more take of the known slot filmed last before it or first after it, or of the
 * open slot that the walk reached last.
 */
function listGuessedRetakes(walk: Walk, clip: WalkClip, passed: number): Reading[] {
  const row = clip.row ?? 0;
  const nearest = [walk.rows.slice(0, row).findLast(isSettled), walk.rows.slice(row + 1).find(isSettled)];
  const readings = nearest.flatMap((known): Reading[] => {
    const slot = known?.ownSlot ?? null;
    return known === undefined || slot === null ? [] : [readGuessedRetake(walk, clip, known, slot)];
  });
  const before = walk.rows[row - 1];
  const reached = passed - 1;
  if (before !== undefined && isOpen(walk, reached))
    readings.push(readGuessedRetake(walk, clip, before, reached));
  return readings;
}

function readGuessedRetake(walk: Walk, clip: WalkClip, neighbour: WalkClip, slot: SlotIndex): Reading {
  const cost = matchingCosts.inferred + priceGap(walk, clip, neighbour) + weighLooks(walk, clip, slot);
  return { role: 'retake', slot, cost };
}

/** What the time between two takes says against their being takes of one visit; see {@link RETAKE_GAP_SHARES}. */
function priceGap(walk: Walk, one: WalkClip, other: WalkClip): number {
  const isEarlier = (one.row ?? 0) < (other.row ?? 0);
  const [earlier, later] = isEarlier ? [one, other] : [other, one];
  const share = walk.timetable.findGapShare(earlier.placed, later.placed);
  if (share === null) return matchingCosts.retakeUntimed;
  const { soon, late } = RETAKE_GAP_SHARES;
  const lateness = Math.min(1, Math.max(0, (share - soon) / (late - soon)));
  return matchingCosts.retakeSoon + lateness * (matchingCosts.retakeLate - matchingCosts.retakeSoon);
}

/** Minus the log-odds of the clip's score for the slot's station, within limits; 0 without a score. */
function weighLooks(walk: Walk, clip: WalkClip, slot: SlotIndex): number {
  const score = findScore(clip.placed.observation, walk.route[slot] ?? '');
  if (score === null) return 0;
  const { looksLimit } = matchingCosts;
  return Math.min(looksLimit, Math.max(-looksLimit, Math.log((1 - score) / score)));
}

/** The observation's score for a station, 0 to 1; null where it has none or the station is known anyway. */
export function findScore(observation: Observation, station: string): number | null {
  if (observation.known || !Object.hasOwn(observation.scores, station)) return null;
  return observation.scores[station] ?? null;
}
