import type { MotionSeries } from './motion-series.ts';

/** What the frames to come are like. */
export interface MotionReaderOptions {
  /** In pixels; the long side about 80. */
  readonly width: number;
  readonly height: number;
  /** Frames per second, about 15. */
  readonly rateHz: number;
}

/** Reads motion from small luma frames, one after another. */
export interface MotionReader {
  /** Takes the next frame: `width × height` bytes, row by row, 0 black to 255 white. The bytes are not kept. */
  push(luma: Uint8Array): void;
  /** The motion of all frames so far; the reader may not be used afterwards. */
  finish(): MotionSeries;
}
