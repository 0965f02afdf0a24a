import type { EpochMs } from '../../platform/units.ts';
import type { DateFact } from '../media-facts.ts';
import type { MediaProblem } from '../media-problem.ts';
import { type RecorderDraft, startRecorder } from '../recorder.ts';

/** A track as far as it has been read; times in its own units, `timescale` of them a second. */
export interface TrackDraft {
  id: number;
  /** `vide`, `soun` or another handler type; empty where none is written. */
  handler: string;
  codec: string | null;
  timescale: number;
  /** Null where the header says "unknown" (all ones) or is missing. */
  duration: number | null;
}

/** What fragments add to a track — ISO/IEC 14496-12 §8.8. */
export interface FragmentTotals {
  /** Sample duration where a fragment names none of its own (`trex`). */
  defaultSampleDuration: number;
  /** Where the last fragment read so far ends, in the track's units. */
  end: number;
}

/** A movie while it is being read: facts are added as their boxes come by. */
export interface MovieDraft {
  hasMovieBox: boolean;
  hasMovieHeader: boolean;
  timescale: number;
  /** The movie header's, in its units; null for "unknown" or none. */
  duration: number | null;
  /** From `mehd`, in the movie's units; null where there is none. */
  fragmentsDuration: number | null;
  readonly fragments: Map<number, FragmentTotals>;
  /** Summed by `sidx`, in seconds by the track that is indexed. */
  readonly indexedSeconds: Map<number, number>;
  modifiedMs: EpochMs | null;
  readonly tracks: TrackDraft[];
  readonly dates: DateFact[];
  readonly recorder: RecorderDraft;
  readonly problems: MediaProblem[];
}

/** A movie of which nothing is known yet. */
export function startMovie(): MovieDraft {
  return {
    hasMovieBox: false,
    hasMovieHeader: false,
    timescale: 0,
    duration: null,
    fragmentsDuration: null,
    fragments: new Map(),
    indexedSeconds: new Map(),
    modifiedMs: null,
    tracks: [],
    dates: [],
    recorder: startRecorder(),
    problems: [],
  };
}

/** Tracks that are read; a phone writes two to five, and a hostile file is not to fill the memory. */
export const MOST_TRACKS = 32;

/** Dates kept per file: one of the movie, two a track, and the tags. */
export const MOST_DATES = 2 * MOST_TRACKS + 16;
