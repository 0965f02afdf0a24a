import type { EpochMs, Seconds } from '../platform/units.ts';
import { MS_PER_SECOND } from '../platform/units.ts';
import { type ClipPlace, orderClips, type SeriesNumber } from './clip-order.ts';
import { findPeriod, type PeriodWindow, splitByBreaks } from './periods.ts';
import type { Stamp } from './stamp.ts';
import { getTabletClock, type TabletClock } from './tablet-clock.ts';

/** Why a clip's time is doubted. */
export type ClockDoubt =
  | 'no-date'
  | 'date-only'
  | 'weak-source'
  | 'local-ambiguous'
  | 'export-date'
  | 'tablet-clock';

/** One clip of one tablet, as far as its time depends on it. */
export interface TabletClip {
  readonly id: string;
  readonly name: string;
  readonly number: SeriesNumber | null;
  readonly stamp: Stamp;
  /** The clip's date was written by an export, together with many others. */
  readonly exportDated: boolean;
  /** The class clock as the clip shows it; null where it does not. */
  readonly clockSeen: { readonly trueStartMs: EpochMs; readonly spreadSeconds: Seconds } | null;
  /** A card of this lesson is in it. */
  readonly showsLesson: boolean;
}

/** A clip with its time as far as that can be told. */
export interface TimedClip {
  readonly id: string;
  /** Start by the true clock; null where there is no date, or a number to go by and a date that is not believed. */
  readonly startMs: EpochMs | null;
  /** Half width of the interval that holds the true start, the tablet's clock included; Infinity where unknown. */
  readonly uncertaintySeconds: Seconds;
  readonly by: ClipPlace['by'];
  /** Code of the period it belongs to, or null. A clip without a date takes its neighbours'. */
  readonly period: string | null;
  /** Null: the date is believed. */
  readonly doubt: ClockDoubt | null;
}

/** All clips of one tablet in the order of filming, and the tablet's clock. */
export interface TabletTimes {
  readonly clock: TabletClock;
  readonly clips: readonly TimedClip[];
  /** The dates of an unchecked clock fit no period at all; the clips were split where the tablet lay unused. */
  readonly splitByBreaks: boolean;
}

/** What a lesson says of time. */
export interface LessonTimes {
  readonly windows: readonly PeriodWindow[];
  /** Code of the period the lesson was held in. */
  readonly period: string;
  readonly graceSeconds: Seconds;
  /** A start less certain than this is doubted. */
  readonly doubtSeconds: Seconds;
}

/**
 * Puts one tablet's clips in time: corrects its clock, orders the clips, gives each its period. A date that is
 * not believed is left out of account, and the clip keeps the place its file number has.
 */
export function getTabletTimes(
  clips: readonly TabletClip[],
  lesson: LessonTimes,
  teacherOffsetSeconds: Seconds | null,
): TabletTimes {
  const clock = getTabletClock(clips.flatMap(getSighting), teacherOffsetSeconds);
  const shiftMs = clock.offsetSeconds * MS_PER_SECOND;
  const starts = new Map(clips.map((clip) => [clip.id, getBelievedStart(clip, shiftMs)]));
  const byId = new Map(clips.map((clip) => [clip.id, clip]));
  const places = orderClips(
    clips.map(({ id, name, number }) => ({ id, name, number, startMs: starts.get(id) ?? null })),
  );
  const ordered = places.flatMap(({ id, by }) => {
    const clip = byId.get(id);
    return clip ? [{ clip, by, startMs: starts.get(id) ?? null }] : [];
  });
  const periods = getPeriods(ordered, lesson, clock.from === 'nothing');
  return {
    clock,
    splitByBreaks: periods.splitByBreaks,
    clips: ordered.map(({ clip, by, startMs }, index) => ({
      id: clip.id,
      startMs,
      by,
      uncertaintySeconds:
        startMs === null
          ? Number.POSITIVE_INFINITY
          : clip.stamp.uncertaintySeconds + clock.uncertaintySeconds,
      period: periods.codes[index] ?? null,
      doubt: findDoubt(clip, lesson.doubtSeconds),
    })),
  };
}

function getSighting(clip: TabletClip) {
  const { id, clockSeen, stamp } = clip;
  if (!clockSeen || stamp.startMs === null || !isBelieved(clip)) return [];
  const { startMs: tabletStartMs, uncertaintySeconds: tabletUncertaintySeconds } = stamp;
  return [{ clip: id, ...clockSeen, tabletStartMs, tabletUncertaintySeconds }];
}

function isBelieved({ stamp: { trust, reason }, exportDated }: TabletClip): boolean {
  return (trust === 'firm' || trust === 'fair') && reason !== 'local-time-ambiguous' && !exportDated;
}

/** A weak date still orders a clip that has no number to go by. */
function getBelievedStart(clip: TabletClip, shiftMs: number): EpochMs | null {
  const { startMs } = clip.stamp;
  if (startMs === null) return null;
  return clip.number === null || isBelieved(clip) ? startMs + shiftMs : null;
}

function findDoubt({ stamp, exportDated }: TabletClip, doubtSeconds: Seconds): ClockDoubt | null {
  if (exportDated) return 'export-date';
  if (stamp.reason === 'name-date-only') return 'date-only';
  if (stamp.trust === 'none' || stamp.source === 'file-time') return 'no-date';
  if (stamp.reason === 'local-time-ambiguous') return 'local-ambiguous';
  return stamp.trust === 'weak' || stamp.uncertaintySeconds > doubtSeconds ? 'weak-source' : null;
}

interface OrderedClip {
  readonly clip: TabletClip;
  readonly by: ClipPlace['by'];
  readonly startMs: EpochMs | null;
}

/**
 * Dates by a checked clock are true: where they fit no period, the clips are of another day, whatever they show. A date
 * that is not believed says nothing against a card of this lesson.
 */
function getPeriods(
  ordered: readonly OrderedClip[],
  lesson: LessonTimes,
  mayBeShifted: boolean,
): { codes: readonly (string | null)[]; splitByBreaks: boolean } {
  const dated = ordered.map(({ clip, startMs }) => {
    if (startMs === null) return undefined;
    const period = findPeriod(startMs, lesson.windows, lesson.graceSeconds);
    return period === null && clip.showsLesson && !isBelieved(clip) ? undefined : period;
  });
  const fitsNowhere = dated.some((code) => code !== undefined) && !dated.some((code) => code);
  const run = fitsNowhere && mayBeShifted ? findLessonRun(ordered) : null;
  const known =
    run === null ? dated : ordered.map(({ startMs }) => getRunPeriod(startMs, run, lesson.period));
  return { codes: fillFromNeighbours(known, lesson.period), splitByBreaks: run !== null };
}

function getRunPeriod(startMs: EpochMs | null, run: Run, period: string): string | null | undefined {
  if (startMs === null) return undefined;
  return startMs >= run.firstMs && startMs <= run.lastMs ? period : null;
}

interface Run {
  readonly firstMs: EpochMs;
  readonly lastMs: EpochMs;
}

/** The unbroken run of clips with the most cards of this lesson, the latest on a tie; the only run needs none. */
function findLessonRun(ordered: readonly OrderedClip[]): Run | null {
  const dated = ordered.filter(({ startMs }) => startMs !== null);
  const startsMs = dated.map(({ startMs }) => startMs ?? 0);
  const runs = splitByBreaks(startsMs).map(({ from, to }) => ({
    firstMs: startsMs[from] ?? 0,
    lastMs: startsMs[to - 1] ?? 0,
    cards: dated.slice(from, to).filter(({ clip }) => clip.showsLesson).length,
  }));
  const best = runs.toSorted((a, b) => b.cards - a.cards || b.lastMs - a.lastMs)[0];
  return best && (best.cards > 0 || runs.length === 1) ? best : null;
}

/** An undated clip goes with the clips before and after it where these agree, else it stays with the lesson. */
function fillFromNeighbours(
  known: readonly (string | null | undefined)[],
  lessonPeriod: string,
): readonly (string | null)[] {
  return known.map((code, index) => {
    if (code !== undefined) return code;
    const before = known.slice(0, index).findLast((other) => other !== undefined);
    const after = known.slice(index + 1).find((other) => other !== undefined);
    const agreed =
      before === undefined ? after : after === undefined || after === before ? before : undefined;
    return agreed === undefined ? lessonPeriod : agreed;
  });
}
