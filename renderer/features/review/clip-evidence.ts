import type { ClipView } from '../../../src-core/contract/lesson-view.ts';
import type { Seconds } from '../../../src-core/platform/units.ts';

/** What was seen in a clip's pictures; each part may be missing by itself. */
export interface ClipEvidence {
  readonly reps: {
    /** Null: the pictures were looked at and no reps were found. */
    readonly count: number | null;
    /** Where the movement turns: the end of each rep, ascending. */
    readonly timesSeconds: readonly Seconds[];
    /** From the first rep's begin to the last one's end; null without reps. */
    readonly spanSeconds: readonly [from: Seconds, to: Seconds] | null;
    /** The movement as one line, about -1 to 1, `rateHz` values a second; absent where it was not kept. */
    readonly trace?: { readonly rateHz: number; readonly signal: ArrayLike<number> };
  } | null;
  readonly unison: {
    readonly score: number;
    /** Left to right. */
    readonly lanes: readonly {
      readonly x: number;
      readonly lagSeconds: Seconds;
      /** For each rep; null where the lane did not do it. */
      readonly repLagsSeconds: readonly (Seconds | null)[];
    }[];
    readonly windows: readonly {
      readonly fromSeconds: Seconds;
      readonly toSeconds: Seconds;
      readonly score: number;
    }[];
  } | null;
}

/** What was seen in a clip; a part that the host does not tell (yet) is null. */
export function getEvidence(clip: ClipView): ClipEvidence {
  const { reps = null, unison = null } = clip as ClipView & Partial<ClipEvidence>;
  return { reps, unison };
}

/** When the first rep begins, for starting several clips together; 0 where reps are not known. */
export function getFirstRepSeconds(clip: ClipView): Seconds {
  return getEvidence(clip).reps?.spanSeconds?.[0] ?? 0;
}
