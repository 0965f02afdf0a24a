import type { Seconds } from '../platform/units.ts';

/**
 * What the teacher says of the performers in a picture: how many there are, or where each one is, from 0, the picture's
 * left edge, to 1, its right.
 */
export type GivenLanes = number | readonly number[];

/** What the teacher may say beforehand. */
export interface UnisonOptions {
  /** Null or absent: number and places are estimated. */
  readonly lanes?: GivenLanes | null;
  /** Largest lag that still counts as together. */
  readonly toleranceSeconds: Seconds;
}

/** One performer, and how it kept with the group. */
export interface UnisonLane {
  /** Middle of its motion, or where the teacher says it is; 0 the picture's left edge to 1 its right. */
  readonly x: number;
  /** Behind the group's mean; negative is ahead; within half a cycle either way. */
  readonly lagSeconds: Seconds;
  /** The same for each rep of the group, read with the cycles next to it; null where the lane did not do it. */
  readonly repLagsSeconds: readonly (Seconds | null)[];
  /** Reps of the group that this lane did. */
  readonly reps: number;
  /**
   * Why it is not together with the group: it leaves out more than one rep, or lies beyond
   * {@link UnisonFinding.reachSeconds} in more than a fifth of those it does. Null: it is.
   */
  readonly fault: 'misses-reps' | 'off-beat' | null;
  /** How steadily it keeps its place in the cycle, 0 to 1: its phase-locking value with the group. */
  readonly steadiness: number;
}

/** A stretch of 5 to 10 s and how far the lanes agree there. */
export interface UnisonWindow {
  readonly fromSeconds: Seconds;
  readonly toSeconds: Seconds;
  /** Order parameter against chance: 0 chance or less, 1 unison. */
  readonly score: number;
}

/** How far a group moves together; a proposal, never a mark. */
export interface UnisonFinding {
  /** Order parameter against chance over all windows: 0 chance or less, 1 unison. */
  readonly score: number;
  /** From left to right; two at least. */
  readonly lanes: readonly UnisonLane[];
  /** Lanes that the teacher says are there and none was found for: they hardly move, or stand behind another. */
  readonly missingLanes: number;
  /** Reps of the group, of which each lane did some. */
  readonly repCount: number;
  /** Ascending, overlapping by half or more. */
  readonly windows: readonly UnisonWindow[];
  /** True where the lanes keep even distances in the cycle (by turns, or half and half) instead of one beat. */
  readonly alternating: boolean;
  /** The largest lag that counts as together here: the tolerance, or a sixth of the cycle where that is less. */
  readonly reachSeconds: Seconds;
  /** No lane has a fault, and they do not alternate. */
  readonly together: boolean;
}
