import type { DateFact } from '../media-facts.ts';
import type { MediaProblem } from '../media-problem.ts';
import { type RecorderDraft, startRecorder } from '../recorder.ts';

/** A Matroska segment while it is being read. */
export interface SegmentDraft {
  /** Nanoseconds in one unit of `duration`; a million unless the file says otherwise — RFC 9559 §5.1.2.9. */
  timestampScale: number;
  duration: number | null;
  hasInfo: boolean;
  hasTags: boolean;
  hasTracks: boolean;
  hasVideo: boolean;
  codec: string | null;
  readonly dates: DateFact[];
  readonly recorder: RecorderDraft;
  readonly problems: MediaProblem[];
  /** Where the seek head says elements lie, by id, in bytes from the beginning of the file. */
  readonly positions: Map<number, number>;
}

/** A segment of which nothing is known yet. */
export function startSegment(): SegmentDraft {
  return {
    timestampScale: 1_000_000,
    duration: null,
    hasInfo: false,
    hasTags: false,
    hasTracks: false,
    hasVideo: false,
    codec: null,
    dates: [],
    recorder: startRecorder(),
    problems: [],
    positions: new Map(),
  };
}
