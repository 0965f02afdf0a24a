import type { EpochMs, Seconds } from '../platform/units.ts';
import { MS_PER_SECOND } from '../platform/units.ts';

/** The class clock as one clip saw it. */
export interface ClockSighting {
  readonly clip: string;
  /** The true instant at which the clip began, told by the code on screen: median over its frames. */
  readonly trueStartMs: EpochMs;
  /** Half the spread over the frames; half a second at least, for the code changes once a second. */
  readonly spreadSeconds: Seconds;
  /** When the tablet says the same clip began. */
  readonly tabletStartMs: EpochMs;
  /** Uncertainty of the tablet's own statement (start or stop unknown, say). */
  readonly tabletUncertaintySeconds: Seconds;
}

/** What has to be added to a tablet's clock, and how sure that is. */
export interface TabletClock {
  readonly offsetSeconds: Seconds;
  readonly uncertaintySeconds: Seconds;
  readonly from: 'teacher' | 'clock-film' | 'nothing';
  /** The sightings that do not fit the one used; empty in the normal case. */
  readonly contradicting: readonly string[];
}

/**
 * How far an unchecked tablet's clock is taken to be off. Tablets on a network keep within a second; one that
 * sits in a cupboard drifts by about a second a day and may have been set by hand: two minutes covers a term.
 * Common practice, not measured.
 */
export const UNCHECKED_CLOCK_SECONDS: Seconds = 120;

/** Two films of the class clock on one tablet agree when they tell the same offset to within this. */
const SAME_CLOCK_SECONDS: Seconds = 3;

/**
 * The correction for one tablet: the teacher's word first, then the films of the class clock (the least
 * uncertain one; those that do not fit it are named), else none with an honest uncertainty.
 */
export function getTabletClock(
  sightings: readonly ClockSighting[],
  teacherOffsetSeconds: Seconds | null,
): TabletClock {
  if (teacherOffsetSeconds !== null) {
    return { offsetSeconds: teacherOffsetSeconds, uncertaintySeconds: 1, from: 'teacher', contradicting: [] };
  }
  const offsets = sightings
    .map((sighting) => ({
      clip: sighting.clip,
      offsetSeconds: (sighting.trueStartMs - sighting.tabletStartMs) / MS_PER_SECOND,
      uncertaintySeconds: Math.max(0.5, sighting.spreadSeconds) + sighting.tabletUncertaintySeconds,
    }))
    .sort((a, b) => a.uncertaintySeconds - b.uncertaintySeconds || a.offsetSeconds - b.offsetSeconds);
  const best = offsets[0];
  if (!best) {
    return {
      offsetSeconds: 0,
      uncertaintySeconds: UNCHECKED_CLOCK_SECONDS,
      from: 'nothing',
      contradicting: [],
    };
  }
  const fits = (offset: (typeof offsets)[number]) =>
    Math.abs(offset.offsetSeconds - best.offsetSeconds) <=
    SAME_CLOCK_SECONDS + offset.uncertaintySeconds + best.uncertaintySeconds;
  return {
    offsetSeconds: best.offsetSeconds,
    uncertaintySeconds: best.uncertaintySeconds,
    from: 'clock-film',
    contradicting: offsets.filter((offset) => !fits(offset)).map(({ clip }) => clip),
  };
}
