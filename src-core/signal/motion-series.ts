import type { Seconds } from '../platform/units.ts';

/** Signed flow on a grid of cells that tile the frame evenly. */
export interface FlowPlanes {
  /** Cells across and down; one is `width / columns` by `height / rows` pixels of the small frame. */
  readonly columns: number;
  readonly rows: number;
  /**
   * Flow to the right and downwards, in pixels of the small frame per frame step; length `frameCount × columns × rows`.
   * Cell (column, row) of frame `i` lies at `i × columns × rows + row × columns + column`.
   */
  readonly u: Float32Array;
  readonly v: Float32Array;
}

/**
 * What moved in a clip, frame by frame: signed flow on a grid of cells with the camera's own motion taken out.
 *
 * Plain data that can be handed to another thread. Frame 0 has no predecessor: its flow and camera step are 0.
 */
export interface MotionSeries extends FlowPlanes {
  /** Frames per second. */
  readonly rateHz: number;
  /**
   * When frame 0 was shown, from the clip's beginning; frame `i` was shown `i / rateHz` later. Above 0 where a clip's sound
   * begins before its pictures.
   */
  readonly fromSeconds: Seconds;
  /** Size of the small frames that the motion was read from, in pixels, upright. */
  readonly width: number;
  readonly height: number;
  readonly frameCount: number;
  /** The same flow from windows half as wide and high: unsteady, but it tells neighbours apart. */
  readonly fine: FlowPlanes;
  /**
   * The camera's step from the frame before, four numbers a frame: how far the still background moved right and down at
   * the picture's middle (pixels of the small frame), log of the zoom (positive: background grew), turn in radians
   * (positive: background turned clockwise).
   */
  readonly camera: Float32Array;
}
