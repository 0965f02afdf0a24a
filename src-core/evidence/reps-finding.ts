import type { Seconds } from '../platform/units.ts';

/**
 * How cycles of a movement become reps: one for each, or one for each of its two sides. By cycles and without a tempo, sides
 * that are each other's mirror image and take turns (a step left, a step right) may pass for cycles of their own.
 */
export type CountingRule = 'cycle' | 'side';

/** What is known beforehand of the exercise. The prescribed number of reps is left out on purpose. */
export interface RepsOptions {
  /** Usual length of one full cycle, shortest and longest; null or absent: any length that can be seen. */
  readonly cycleSeconds?: readonly [Seconds, Seconds] | null;
  readonly counting: CountingRule;
}

/** A stretch of one movement without a break; a pause ends one and the next cycle begins another. */
export interface RepRun {
  /** Where cycles begin and end: one more than there are cycles, ascending. */
  readonly boundariesSeconds: readonly Seconds[];
  /** Trust in each cycle, 0 to 1. */
  readonly confidences: readonly number[];
}

/** What the count rests on, `rateHz` values a second from the clip's beginning, for drawing. */
export interface RepsTrace {
  readonly rateHz: number;
  /** Length of the full cycle under way at that frame, in seconds; 0 where there is none. */
  readonly cycleSecondsAt: Float32Array;
  /** How well the motion one such cycle before and after agrees with this frame's, 0 to 1. */
  readonly strength: Float32Array;
  /** The movement as one signed line: flow along its main direction; unit free, about -1 to 1. */
  readonly signal: Float32Array;
}

/** How often a clip repeats itself; a proposal, never a mark. */
export interface RepsFinding {
  /** Reps by the counting rule; null: none found. */
  readonly count: number | null;
  /** Trust in the answer, "none found" included, 0 to 1. */
  readonly confidence: number;
  /** The end of each rep, ascending; as many as `count`. */
  readonly timesSeconds: readonly Seconds[];
  /** Trust in each rep, 0 to 1; as many as `count`. */
  readonly repConfidences: readonly number[];
  /** Median length of a full cycle, whatever the counting rule; null without reps. */
  readonly cycleSeconds: Seconds | null;
  /** From the first cycle's begin to the last one's end, pauses included; null without reps. */
  readonly spanSeconds: readonly [from: Seconds, to: Seconds] | null;
  /** The stretches between pauses, ascending; empty without reps. */
  readonly runs: readonly RepRun[];
  readonly trace: RepsTrace;
}
