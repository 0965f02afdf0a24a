import type { EpochMs } from '../platform/units.ts';

/** No tablet, phone or camera filmed squads before this; earlier dates are counters that were never set. */
const EARLIEST_MS: EpochMs = Date.UTC(1990, 0, 1);

/** A clock may be ahead by a wrong date line, not by more. */
const AHEAD_MS = 24 * 3_600_000;

/**
 * Instants that stand for "none": zeros and full counters of the usual epochs. Those before 1990 are here for the
 * reader; the full counter is not refused by the calendar after 2040.
 */
const SENTINELS: ReadonlySet<EpochMs> = new Set([
  // 0 in a QuickTime or ISO header.
  Date.UTC(1904, 0, 1),
  // 0 in Unix seconds, 2082844800 in such a header.
  0,
  // 0 in EBML and in Apple's own epoch; seen on exported clips.
  Date.UTC(2001, 0, 1),
  // 4294967295, the largest 32-bit header value.
  Date.UTC(2040, 1, 6, 6, 28, 15),
]);

/**
 * Whether a date can be when a clip was filmed: not a sentinel, not before 1990, not more than a day after now.
 * So a header written in Unix seconds by mistake (1960, say) is refused too: it is told to the teacher and not
 * repaired, since nothing in the file says which mistake it was.
 */
export function isPlausibleDate(ms: EpochMs, nowMs: EpochMs): boolean {
  return ms >= EARLIEST_MS && ms <= nowMs + AHEAD_MS && !SENTINELS.has(ms);
}
