import { type EpochMs, MS_PER_SECOND, type Seconds } from '../platform/units.ts';

/** A stretch of time that clips belong into. */
export interface ShiftPeriod {
  readonly startMs: EpochMs;
  readonly endMs: EpochMs;
}

/** Zones lie on whole quarters of an hour, at most 14 h from UTC (IANA time zone database). */
const STEP_MINUTES = 15;
const FARTHEST_MINUTES = 14 * 60;

/**
 * Below this share of fitting clips the dates fit badly as they are, and from this share on they fit well: a clip
 * in ten may be left over from elsewhere. Chosen, not measured; both are the teacher's to overrule.
 */
const FITS_BADLY_BELOW = 0.5;
const FITS_WELL_FROM = 0.9;

/** One clip proves no shift. */
const FEWEST_CLIPS = 2;

/**
 * The shift that brings a tablet's clips into the timetable, in seconds to be added to their instants: a whole
 * number of quarter hours up to ±14 h, never 0. Proposed only where the clips fit badly as they are and one shift
 * explains them, and never to be applied unasked. Neighbouring shifts that fit as well are one explanation, of
 * which the best fit counts, then the whole hour before the half and the quarter, then the smallest; two
 * explanations apart from each other (a day of equal periods) are none. Null: nothing to propose.
 *
 * @param startsMs starts of one tablet's clips, in any order
 */
export function findQuarterHourShift(
  startsMs: readonly EpochMs[],
  periods: readonly ShiftPeriod[],
): Seconds | null {
  const fittingNow = countFitting(startsMs, periods, 0);
  if (startsMs.length < FEWEST_CLIPS || fittingNow / startsMs.length >= FITS_BADLY_BELOW) return null;
  const runs = groupNeighbours(
    ALL_SHIFTS.map((minutes) => ({ minutes, fitting: countFitting(startsMs, periods, minutes) })).filter(
      ({ fitting }) => fitting / startsMs.length >= FITS_WELL_FROM,
    ),
  );
  if (runs.length !== 1) return null;
  const best = runs[0]?.toSorted(
    (a, b) =>
      b.fitting - a.fitting ||
      getRoundness(b.minutes) - getRoundness(a.minutes) ||
      Math.abs(a.minutes) - Math.abs(b.minutes),
  )[0];
  return best ? best.minutes * 60 : null;
}

const ALL_SHIFTS: readonly number[] = Array.from(
  { length: (2 * FARTHEST_MINUTES) / STEP_MINUTES + 1 },
  (_, index) => index * STEP_MINUTES - FARTHEST_MINUTES,
);

interface Shift {
  readonly minutes: number;
  /** Clips that begin within a period once shifted. */
  readonly fitting: number;
}

function countFitting(
  startsMs: readonly EpochMs[],
  periods: readonly ShiftPeriod[],
  minutes: number,
): number {
  const shiftMs = minutes * 60 * MS_PER_SECOND;
  return startsMs.filter((ms) =>
    periods.some(({ startMs, endMs }) => ms + shiftMs >= startMs && ms + shiftMs <= endMs),
  ).length;
}

function groupNeighbours(shifts: readonly Shift[]): readonly (readonly Shift[])[] {
  const runs: Shift[][] = [];
  for (const shift of shifts) {
    const last = runs.at(-1);
    const isNeighbour = last?.at(-1)?.minutes === shift.minutes - STEP_MINUTES;
    if (last && isNeighbour) last.push(shift);
    else runs.push([shift]);
  }
  return runs;
}

function getRoundness(minutes: number): number {
  if (minutes % 60 === 0) return 2;
  return minutes % 30 === 0 ? 1 : 0;
}
