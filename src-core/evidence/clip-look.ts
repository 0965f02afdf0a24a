import type { Seconds } from '../platform/units.ts';
import type { MovingColour } from './moving-colours.ts';
import type { PlaceLook } from './place-look.ts';

/** What a clip's few pictures say of its place and its pinnies. */
export interface ClipLook {
  /** Length of the clip as its decoder understands it; null where it does not say, as for stills. */
  readonly durationSeconds: Seconds | null;
  /** Null: no picture was decoded. */
  readonly place: PlaceLook | null;
  readonly movingColours: readonly MovingColour[];
  /** Key pictures of a first look, or one picture a second of the whole clip, which says more. */
  readonly from: 'key-pictures' | 'whole-clip';
}
