import type { EpochMs, Seconds } from '../platform/units.ts';

/** Where in a file a date was found, strongest statement about the recording first. */
export type DateField =
  | 'recording-key' // com.apple.quicktime.creationdate, or the ISO user-data date
  | 'recorded-tag' // Matroska DATE_RECORDED
  | 'day-tag' // ©day
  | 'exif-original' // DateTimeOriginal
  | 'movie-header' // mvhd
  | 'track-header' // tkhd
  | 'media-header' // mdhd
  | 'segment-date' // Matroska DateUTC
  | 'riff-date'; // AVI IDIT or ICRD

/** One date as found in a file, before anybody judges it. */
export interface DateFact {
  readonly field: DateField;
  /** The bytes' own value for messages: raw header number, or the text as written. */
  readonly raw: string;
  /** The instant it names, where it names one; null for local times, years and values outside any clock. */
  readonly instantMs: EpochMs | null;
  /** `YYYY-MM-DDTHH:MM:SS` where only a local time is written, else null. */
  readonly local: string | null;
  /** The offset from UTC as written, in minutes; null where none is written. */
  readonly offsetMinutes: number | null;
}

/** What a file's bytes say of themselves. Nothing here is judged; `intake/` does that. */
export interface MediaFacts {
  readonly container: 'mp4' | 'quicktime' | 'matroska' | 'webm' | 'avi' | 'jpeg' | 'heic' | 'png';
  /** Video or still picture, or neither (sound alone). */
  readonly holds: 'video' | 'still' | 'sound';
  /** Length of the recording; null for stills and where the file does not say. */
  readonly durationSeconds: Seconds | null;
  /** Every date found, in the order of the file. */
  readonly dates: readonly DateFact[];
  /** The movie header's modification instant, where there is one and it is plausible. */
  readonly modifiedMs: EpochMs | null;
  /** What recorded it, as far as the file tells: make, model, software, brand. Empty strings where unknown. */
  readonly recorder: {
    readonly brand: string;
    readonly make: string;
    readonly model: string;
    readonly software: string;
    /** The `com.android.version` key is present. */
    readonly android: boolean;
  };
  /** Codec's four-character code or Matroska codec id of the first video track; null where there is none. */
  readonly codec: string | null;
}
