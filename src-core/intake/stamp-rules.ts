import type { DateField } from '../media/media-facts.ts';
import type { Seconds } from '../platform/units.ts';
import type { StampReason, StampTrust } from './stamp.ts';

/**
 * How a field of a file is taken.
 *
 * - `start`: it names the beginning of the recording.
 * - `header`: beginning or end, found out by {@link HEADER_MEANINGS}; UTC by standard in MP4, by custom only in MOV.
 * - `file-creation`: when the file was put together, at the recording or any time after it.
 * - `unknown`: a date of the recording, beginning or end not said.
 */
export type FieldUse = 'start' | 'header' | 'file-creation' | 'unknown';

/** One line of {@link FIELD_RULES}. */
export interface FieldRule {
  readonly field: DateField;
  readonly use: FieldUse;
  /** With an offset or in UTC; one grade less for a local time in the school's zone. */
  readonly trust: StampTrust;
  readonly reason: StampReason;
}

/**
 * THE RULE, first line that gives a plausible date (`plausible-date.ts`) wins; to change what is believed, change
 * it here. Before a header that nothing explains comes nothing; after the fields come the file's name (`fair`, if
 * it names a time; a day alone orders nothing), then `segment-date`, and last the file system's date, which any
 * copying changes (`weak`).
 *
 * | field          | says                                  | source                                                |
 * |----------------|---------------------------------------|-------------------------------------------------------|
 * | recording-key  | start, with offset                    | Apple, "QuickTime metadata keys"; AVMetadataISOUserDataKeyDate: "when the clip's recording started" |
 * | recorded-tag   | start, UTC                            | Matroska tags, DATE_RECORDED: "the time that the recording began" |
 * | exif-original  | start, offset where written           | EXIF 2.32 §4.6.6, DateTimeOriginal                     |
 * | day-tag        | content creation, taken as the start  | Apple, "User data atoms", ©day                         |
 * | movie-header   | start (iOS) or stop (Android), UTC    | ISO/IEC 14496-12 §8.2.2.3; see HEADER_MEANINGS         |
 * | riff-date      | a local time                          | Microsoft, "AVI RIFF File Reference" (common practice) |
 * | media-header,  | as movie-header, one grade less:      | Apple, QuickTime File Format, track and media headers; |
 * | track-header   | editors often change only `mvhd`      | github.com/subsurface/subsurface/pull/2963             |
 * | segment-date   | when the file was muxed               | RFC 9559, DateUTC                                      |
 */
export const FIELD_RULES: readonly FieldRule[] = [
  { field: 'recording-key', use: 'start', trust: 'firm', reason: 'recording-date-written' },
  { field: 'recorded-tag', use: 'start', trust: 'firm', reason: 'recording-date-written' },
  { field: 'exif-original', use: 'start', trust: 'firm', reason: 'exif-original-written' },
  { field: 'day-tag', use: 'start', trust: 'fair', reason: 'recording-date-written' },
  { field: 'movie-header', use: 'header', trust: 'fair', reason: 'header-alone' },
  { field: 'riff-date', use: 'unknown', trust: 'firm', reason: 'header-alone' },
  { field: 'media-header', use: 'header', trust: 'weak', reason: 'header-implausible' },
  { field: 'track-header', use: 'header', trust: 'weak', reason: 'header-implausible' },
];

/** Fields that are asked only where the file's name gives no time. */
export const LAST_FIELD_RULES: readonly FieldRule[] = [
  { field: 'segment-date', use: 'file-creation', trust: 'weak', reason: 'file-creation-only' },
];

/** What shows whether a header was written at the beginning or at the end of a recording. */
export interface HeaderMeaningRule {
  readonly reason: StampReason;
  readonly meaning: 'start' | 'stop';
  readonly trust: StampTrust;
}

/**
 * Start or stop, first line that holds wins; where none does the meaning is `unknown`, the instant is taken as it
 * stands, and the uncertainty is one length of the clip.
 *
 * | evidence                                                  | meaning | source                                       |
 * |-----------------------------------------------------------|---------|----------------------------------------------|
 * | modification − creation = duration                        | start   | iOS 16 original: andrewning/sortphotos #157   |
 * | creation = modification, name's start + duration = creation | stop  | ten of ten: asielen/plaintext-family-history #44; photoprism #1388; exiftool-vendored.js #113 |
 * | name's start = creation                                   | start   | what the name's forms mean                    |
 * | creation = modification, `com.android.version` present    | stop    | AOSP MPEG4Writer::writeMvhdBox: time(NULL) at stop, same value twice |
 */
export const HEADER_MEANINGS = {
  modifiedAfterDuration: { reason: 'modified-after-duration', meaning: 'start', trust: 'fair' },
  namePlusDuration: { reason: 'name-plus-duration-is-header', meaning: 'stop', trust: 'firm' },
  nameIsHeader: { reason: 'name-agrees-with-header', meaning: 'start', trust: 'firm' },
  android: { reason: 'android-writes-at-stop', meaning: 'stop', trust: 'fair' },
} as const satisfies Readonly<Record<string, HeaderMeaningRule>>;

/**
 * How near two dates must lie to be the same one: both are whole seconds, and closing a file takes up to a second
 * (1.11 s in photoprism #1388; iPhone X 22 s against 22 s in sortphotos #157).
 */
export const SAME_INSTANT_SECONDS: Seconds = 2;

/** What a date to the second is worth at best: its own rounding. */
export const WRITTEN_SECOND: Seconds = 1;

/** Zones reach from −12 h to +14 h (IANA time zone database): how far off a local time taken for UTC can be. */
export const FARTHEST_ZONE_SECONDS: Seconds = 14 * 3600;

/** One grade less; `none` stays. */
export function lowerTrust(trust: StampTrust): StampTrust {
  return trust === 'firm' ? 'fair' : trust === 'none' ? 'none' : 'weak';
}
