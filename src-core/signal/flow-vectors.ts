import type { MotionSeries } from './motion-series.ts';

/** One vector a frame: the flow of all cells, made fit for comparing frames with one another. */
export interface FlowVectors {
  readonly rateHz: number;
  readonly frameCount: number;
  /** Numbers per frame: right and down for every cell. */
  readonly size: number;
  /** Frame by frame, `frameCount × size`. */
  readonly values: Float32Array;
}

/** Flow (pixels of an 80-pixel frame per fifteenth of a second) around which compression sets in. */
const KNEE = 0.1;
/** Binomial smoothing over neighbouring frames, so that a repeated or dropped frame does not count as a movement. */
const SMOOTHING = [0.25, 0.5, 0.25];

/**
 * Lays the flow of each frame out as one vector: lengths compressed towards their square root, so that one near
 * or fast mover does not drown the rest; smoothed over three frames.
 */
export function buildFlowVectors(motion: MotionSeries): FlowVectors {
  const { frameCount, columns, rows, rateHz } = motion;
  const cells = columns * rows;
  const size = 2 * cells;
  const raw = new Float32Array(frameCount * size);
  const scale = (80 / Math.max(motion.width, motion.height)) * (rateHz / 15);
  for (let frame = 1; frame < frameCount; frame++) {
    for (let cell = 0; cell < cells; cell++) {
      const x = (motion.u[frame * cells + cell] as number) * scale;
      const y = (motion.v[frame * cells + cell] as number) * scale;
      const shrink = 1 / Math.sqrt(Math.hypot(x, y) + KNEE);
      raw[frame * size + 2 * cell] = x * shrink;
      raw[frame * size + 2 * cell + 1] = y * shrink;
    }
  }
  return { rateHz, frameCount, size, values: smoothFrames(raw, size) };
}

function smoothFrames(raw: Float32Array, size: number): Float32Array {
  const values = new Float32Array(raw.length);
  const last = raw.length - size;
  const [before = 0, here = 0, after = 0] = SMOOTHING;
  for (let at = 0; at < raw.length; at++) {
    values[at] =
      before * (raw[at >= size ? at - size : at] as number) +
      here * (raw[at] as number) +
      after * (raw[at < last ? at + size : at] as number);
  }
  return values;
}
