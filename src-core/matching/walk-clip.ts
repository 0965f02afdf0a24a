import type { SlotIndex, StationCode } from '../lesson/plan.ts';
import type { PlacedClip } from './observation.ts';

/** A clip with what is settled about it before anything is guessed. */
export interface WalkClip {
  readonly placed: PlacedClip;
  /** Position among the clips that have an order, or null without one. */
  readonly row: number | null;
  /** The station as known by card or teacher; null where unknown. */
  readonly station: StationCode | null;
  /** The slot it must go to: the teacher's, else its known station's; null where unknown or off the route. */
  readonly ownSlot: SlotIndex | null;
  /** The teacher put it there by hand. */
  readonly slotIsFinal: boolean;
}
