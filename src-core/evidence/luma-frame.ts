import type { Seconds } from '../platform/units.ts';

/** One picture of a clip, brightness alone, upright as the clip's rotation metadata asks. */
export interface LumaFrame {
  /** In pixels. */
  readonly width: number;
  /** In pixels. */
  readonly height: number;
  /** The picture's presentation time from the start of the clip, exact to the frame. */
  readonly atSeconds: Seconds;
  /** `width × height` bytes, row by row, 0 black to 255 white. */
  readonly luma: Uint8Array;
}
