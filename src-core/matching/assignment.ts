import type { SlotIndex, StationCode } from '../lesson/plan.ts';
import type { ClipId } from './observation.ts';

/** What a clip is to its squad's route. */
export type ClipRole = 'counts' | 'retake' | 'wrong-place' | 'extra' | 'unplaced';

/** Where one clip belongs, as proposed. */
export interface ClipAssignment {
  readonly clip: ClipId;
  readonly role: ClipRole;
  /** The slot it counts for, retakes, or (wrong place) whose time it fills; null for extra and unplaced. */
  readonly slot: SlotIndex | null;
  /** Where it was filmed; null where nobody knows and the walk does not tell. */
  readonly station: StationCode | null;
  /** Who says so; null exactly where `station` is null. */
  readonly stationFrom: 'teacher' | 'card' | 'inferred' | null;
  /** False exactly where the clip is flagged as out of order. */
  readonly inOrder: boolean;
}

/** An explanation of one clip, as named to the teacher; slot null means "belongs to no slot". */
export interface NamedChoice {
  readonly slot: SlotIndex | null;
  /** The station it would have been filmed at; null where that stays unknown. */
  readonly station: StationCode | null;
}
