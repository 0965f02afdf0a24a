import type { Seconds } from '../platform/units.ts';

/** One small picture of a clip in colour, upright; its longer side has 128 pixels at most. */
export interface ColourFrame {
  /** In pixels, even. */
  readonly width: number;
  readonly height: number;
  /** Presentation time from the start of the clip. */
  readonly atSeconds: Seconds;
  /**
   * Studio-range YUV 4:2:0 by ITU-R BT.601, plane after plane: `width × height` bytes of luma, then a quarter of
   * that for each of the two colour differences, blue first.
   */
  readonly yuv: Uint8Array;
}
