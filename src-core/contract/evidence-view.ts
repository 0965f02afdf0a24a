import type { ClipId } from '../matching/observation.ts';
import type { Seconds } from '../platform/units.ts';

/** One line of a clip's strip: a rep, or a moment at an even step where reps are not known. */
export interface StripLine {
  /** The rep's number from 1; null for a picture that only shows the clip at an even step. */
  readonly number: number | null;
  /** The moment that is shown: where the movement turns, at the end of its rep. */
  readonly atSeconds: Seconds;
  /** A JPEG file in base64, its longer side 224 pixels at most; null: none is kept, and `client.media.still` cuts one. */
  readonly jpeg: string | null;
}

/** Reps as they are drawn. */
export interface RepsView {
  /** By the counting rule; null: looked for and none found. */
  readonly count: number | null;
  /** Trust in the answer, "none found" included, 0 to 1. */
  readonly confidence: number;
  /** The end of each rep, ascending; as many as `count`. */
  readonly timesSeconds: readonly Seconds[];
  /** Begin and end of each stretch without a pause, ascending; empty without reps. */
  readonly runsSeconds: readonly (readonly [from: Seconds, to: Seconds])[];
  /** From the first rep's begin to the last one's end; null without reps. */
  readonly spanSeconds: readonly [from: Seconds, to: Seconds] | null;
  /** The movement as one line, about -1 to 1 to two places, `rateHz` values a second from the clip's beginning. */
  readonly trace: { readonly rateHz: number; readonly signal: readonly number[] };
}

/** One performer as drawn: left to right. */
export interface LaneView {
  /** Middle of its motion, 0 the picture's left edge to 1 its right. */
  readonly x: number;
  /** Behind the group; negative is ahead. */
  readonly lagSeconds: Seconds;
  /** For each rep of the group; null where the lane did not do it. */
  readonly repLagsSeconds: readonly (Seconds | null)[];
}

/** Unison as it is drawn. */
export interface UnisonView {
  /** The teacher says how many lanes there are, or where; false: estimated. */
  readonly areLanesGiven: boolean;
  /** 0 chance or less, 1 unison. */
  readonly score: number;
  readonly lanes: readonly LaneView[];
  /** Stretches of 5 to 10 s and how far the lanes agree there, ascending. */
  readonly windows: readonly {
    readonly fromSeconds: Seconds;
    readonly toSeconds: Seconds;
    readonly score: number;
  }[];
  /** By turns or half and half instead of on one beat. */
  readonly alternating: boolean;
  /** The largest lag that counts as together: the plan's tolerance, or less where the movement is fast. */
  readonly reachSeconds: Seconds;
}

/** All that is drawn beside one clip's film: too much for three hundred clips at once, so it is asked for singly. */
export interface EvidenceView {
  readonly clip: ClipId;
  readonly strip: readonly StripLine[];
  /** Null: not watched, or nothing could be decoded. */
  readonly reps: RepsView | null;
  /** Null: not measured, or lanes could not be told apart. */
  readonly unison: UnisonView | null;
}
