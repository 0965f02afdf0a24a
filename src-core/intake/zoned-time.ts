import { Temporal } from 'temporal-polyfill';
import type { EpochMs } from '../platform/units.ts';

/** The instants a local time can mean in a zone. */
export type LocalInstants =
  | { readonly kind: 'unique'; readonly ms: EpochMs }
  /** The clocks went back: the hour was lived through twice. */
  | { readonly kind: 'ambiguous'; readonly earlierMs: EpochMs; readonly laterMs: EpochMs }
  /** The clocks went forward over it: no clock of the zone ever showed it. */
  | { readonly kind: 'skipped' }
  /** Not a time, or not a zone of the IANA database. */
  | { readonly kind: 'invalid' };

/** Which instants `YYYY-MM-DDTHH:MM:SS` means in an IANA zone, daylight saving included. */
export function findLocalInstants(local: string, zone: string): LocalInstants {
  try {
    const time = Temporal.PlainDateTime.from(local);
    const earlier = time.toZonedDateTime(zone, { disambiguation: 'earlier' });
    const later = time.toZonedDateTime(zone, { disambiguation: 'later' });
    const earlierMs = earlier.epochMilliseconds;
    const laterMs = later.epochMilliseconds;
    if (earlierMs === laterMs) return { kind: 'unique', ms: earlierMs };
    const isShown = earlier.toPlainDateTime().equals(time);
    return isShown ? { kind: 'ambiguous', earlierMs, laterMs } : { kind: 'skipped' };
  } catch (error) {
    if (error instanceof RangeError) return { kind: 'invalid' };
    throw error;
  }
}

/** `YYYY-MM-DDTHH:MM:SS` as a clock in the zone shows the instant; null for an unknown zone. */
export function findLocalTime(ms: EpochMs, zone: string): string | null {
  const offsetMinutes = findOffsetMinutes(ms, zone);
  return offsetMinutes === null ? null : new Date(ms + offsetMinutes * 60_000).toISOString().slice(0, 19);
}

/** Minutes east of UTC in a zone at an instant; null for an unknown zone or an instant beyond the calendar. */
export function findOffsetMinutes(ms: EpochMs, zone: string): number | null {
  try {
    const instant = Temporal.Instant.fromEpochMilliseconds(Math.floor(ms));
    return instant.toZonedDateTimeISO(zone).offsetNanoseconds / 60e9;
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}
