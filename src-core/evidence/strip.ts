import type { Seconds } from '../platform/units.ts';
import type { RepsFinding } from './reps-finding.ts';

/** One picture of the strip that a teacher counts along. */
export interface StripStill {
  /** The rep's number from 1; null for a picture that only shows the clip at an even step. */
  readonly number: number | null;
  /** The moment to be shown, from the start of the clip. */
  readonly atSeconds: Seconds;
}

/** Evenly spaced pictures where no reps were found. */
const EVEN_STILLS = 12;

/**
 * The moments of a clip's strip: one for each rep, all where the movement turns, numbered; evenly spaced ones where
 * no reps were found. Ascending; empty for a clip without length.
 */
export function listStripStills(
  reps: Pick<RepsFinding, 'count' | 'timesSeconds'> | null,
  durationSeconds: Seconds | null,
): readonly StripStill[] {
  if (reps?.count) return reps.timesSeconds.map((atSeconds, at) => ({ number: at + 1, atSeconds }));
  if (!durationSeconds) return [];
  return Array.from({ length: EVEN_STILLS }, (_, at) => ({
    number: null,
    atSeconds: ((at + 0.5) * durationSeconds) / EVEN_STILLS,
  }));
}
