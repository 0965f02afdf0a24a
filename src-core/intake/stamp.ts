import type { DateField } from '../media/media-facts.ts';
import type { EpochMs, Seconds } from '../platform/units.ts';

/** Where a stamp's date came from: a field of the file, its name, or the file system. */
export type StampSource = DateField | 'file-name' | 'file-time' | 'none';

/** Whether the recording began or ended at the instant that was read. */
export type StampMeaning = 'start' | 'stop' | 'unknown';

/** How far to believe a stamp: `firm` and `fair` order clips; `weak` and `none` are flagged. */
export type StampTrust = 'firm' | 'fair' | 'weak' | 'none';

/** Why a stamp was believed, as a code that the faces word; the rules behind them stand in `stamp-rules.ts`. */
export type StampReason =
  /** The file names the date of the recording itself, in words. */
  | 'recording-date-written'
  | 'modified-after-duration'
  | 'name-plus-duration-is-header'
  /** The file's name gives the start, and the header the same instant. */
  | 'name-agrees-with-header'
  | 'android-writes-at-stop'
  | 'exif-original-written'
  /** A date of the recording; nothing says whether of its beginning or its end. */
  | 'header-alone'
  /** The file's name shows that the header holds the camera's local time as if it were UTC. */
  | 'header-local-by-custom'
  /** The date says when the file was put together, which may be long after filming. */
  | 'file-creation-only'
  | 'name-only'
  /** The name gives a day, and nothing gives a time: the clip cannot be ordered. */
  | 'name-date-only'
  | 'file-time-only'
  /** The clocks went back over this local time: it was shown twice. No start is given. */
  | 'local-time-ambiguous'
  /** The clocks went forward over this local time: it was never shown. No start is given. */
  | 'local-time-skipped'
  /** The movie's own header says nothing possible; the header of a track does. */
  | 'header-implausible'
  | 'nothing-usable';

/** An instant read for a clip, with the source it came from and how far to trust it. */
export interface Stamp {
  /** The instant the chosen source gives; null where it gives a local time only, or nothing. */
  readonly readMs: EpochMs | null;
  /** `YYYY-MM-DDTHH:MM:SS` where a local time is all there is, else null. */
  readonly local: string | null;
  readonly source: StampSource;
  readonly meaning: StampMeaning;
  /**
   * The believed start of the recording by the tablet's own clock; null where nothing can be believed (trust
   * `none`), and where a local time is known but not the instant it means (trust `weak`).
   */
  readonly startMs: EpochMs | null;
  /** Half width of the interval that holds the true start, tablet clock taken as right; Infinity where unknown. */
  readonly uncertaintySeconds: Seconds;
  readonly trust: StampTrust;
  readonly reason: StampReason;
  /** Facts met on the way that the teacher may want to know; each is worded by the faces. */
  readonly problems: readonly StampProblem[];
}

/** Something odd about a clip's dates that did not stop a stamp from being read. */
export type StampProblem =
  /** A date that cannot be when a clip was filmed (never set, counted from the wrong year, to come, a year alone). */
  | { readonly code: 'stamp-header-unusable'; readonly field: DateField; readonly raw: string }
  | {
      readonly code: 'stamp-sources-disagree';
      readonly chosen: StampSource;
      readonly other: StampSource;
      readonly differenceSeconds: Seconds;
    }
  /** UTC by custom only, or a local time with no zone to read it in. */
  | { readonly code: 'stamp-zone-unknown'; readonly source: StampSource }
  | { readonly code: 'stamp-local-ambiguous'; readonly local: string }
  | { readonly code: 'stamp-local-skipped'; readonly local: string }
  | { readonly code: 'stamp-date-without-time'; readonly date: string };
