import type { StationCode } from '../lesson/plan.ts';
import type { EpochMs, Seconds } from '../platform/units.ts';

/** A clip's identity: derived from its content, so that it survives renaming, copying and a second import. */
export type ClipId = string;

/**
 * What is known of where a clip was filmed. A card or the teacher's word settles the station; otherwise every
 * kind of evidence (place look-alike, reps and tempo) adds a score per station, 0 (against) to 1 (for), and a
 * station without a score is neither favoured nor ruled out.
 */
export type Observation =
  | { readonly known: true; readonly station: StationCode; readonly from: 'teacher' | 'card' }
  | { readonly known: false; readonly scores: Readonly<Record<StationCode, number>> };

/** One of a squad's clips as the matcher sees it: when, and where as far as known. */
export interface PlacedClip {
  readonly clip: ClipId;
  /** Corrected start; null where only the order within the tablet is known. */
  readonly startMs: EpochMs | null;
  readonly uncertaintySeconds: Seconds;
  /** False where neither a date nor a file number gives the clip a place among the others. */
  readonly hasOrder: boolean;
  readonly observation: Observation;
  /** The slot the teacher put this clip into by hand, or null. */
  readonly slotByTeacher: number | null;
}
