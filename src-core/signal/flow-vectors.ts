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

// Set with the numbers of `evidence/reps-rule.ts`, by how the filmed sweep came out.

/** Flow (pixels of an 80-pixel frame per fifteenth of a second) that counts as little wherever it is. */
const LITTLE = 0.05;
/** How much of the time a cell's flow is below what is usual for it. */
const USUAL_SHARE = 0.75;
/** Flow this many times the clip's median is half believed; less of it, the shorter it is. */
const FLOOR_RATIO = 1;
/** How much cells that move much still outweigh the others: 1 as they are, 0 not at all. A fan turns without a rest. */
const EVEN_CELLS = 0.5;
/** Camera step (same unit) at which half of what is seen is believed: fast swings leave ghosts of the background. */
const FAST_CAMERA = 3;

/**
 * Lays the flow of each frame out as one vector. Lengths level off at what is usual for their cell, so that neither a
 * near mover nor somebody who walks through once drowns the rest.
 */
export function buildFlowVectors(motion: MotionSeries): FlowVectors {
  const { frameCount, columns, rows, rateHz, u, v } = motion;
  const cells = columns * rows;
  const size = 2 * cells;
  const values = new Float32Array(frameCount * size);
  const scale = (80 / Math.max(motion.width, motion.height)) * (rateHz / 15);
  const lengths = new Float32Array(frameCount);
  const floor = (FLOOR_RATIO * findFloor(motion) * scale) ** 2 + 1e-6;
  const trusts = listTrusts(motion, scale);
  for (let cell = 0; cell < cells; cell++) {
    for (let frame = 0; frame < frameCount; frame++) {
      const at = frame * cells + cell;
      lengths[frame] = scale * measureLength(u[at] as number, v[at] as number);
    }
    const usual = LITTLE + findUsual(lengths);
    for (let frame = 1; frame < frameCount; frame++) {
      const at = frame * cells + cell;
      const length = lengths[frame] as number;
      const square = length * length;
      const factor =
        ((trusts[frame] as number) * scale * usual ** EVEN_CELLS * square) /
        ((usual + length) * (square + floor));
      values[frame * size + 2 * cell] = (u[at] as number) * factor;
      values[frame * size + 2 * cell + 1] = (v[at] as number) * factor;
    }
  }
  evenOut(values, size, rateHz);
  return { rateHz, frameCount, size, values };
}

/** Flow is never so long or so short that its square would be lost, which Math.hypot guards against at ten times the cost. */
function measureLength(right: number, down: number): number {
  return Math.sqrt(right * right + down * down);
}

/** Median length of flow over all cells, of every fourth frame: what ghosts of the background and noise amount to. */
function findFloor({ u, v, columns, rows, frameCount }: MotionSeries): number {
  const cells = columns * rows;
  const lengths = new Float32Array(Math.ceil(frameCount / 4) * cells);
  for (let frame = 0, at = 0; frame < frameCount; frame += 4) {
    for (let cell = 0; cell < cells; cell++, at++) {
      lengths[at] = measureLength(u[frame * cells + cell] as number, v[frame * cells + cell] as number);
    }
  }
  return lengths.sort()[lengths.length >> 1] ?? 0;
}

function findUsual(lengths: Float32Array): number {
  const sorted = lengths.slice().sort();
  return sorted[Math.floor(USUAL_SHARE * sorted.length)] ?? 0;
}

function listTrusts({ camera, frameCount }: MotionSeries, scale: number): Float32Array {
  return Float32Array.from({ length: frameCount }, (_, frame) => {
    const step = Math.hypot(camera[4 * frame] as number, camera[4 * frame + 1] as number) * scale;
    return 1 / (1 + (step / FAST_CAMERA) ** 2);
  });
}

/** Time over which the energy of frames is averaged when it is evened out, in seconds (standard deviation). */
const EVEN_SECONDS = 1;

/**
 * Compresses slow changes of the whole vector's length to their square root: somebody who comes nearer while moving, or
 * moves less as they tire, stays one movement. In place.
 */
function evenOut(values: Float32Array, size: number, rateHz: number): void {
  const count = values.length / size;
  const energies = new Float64Array(count);
  for (let at = 0; at < values.length; at++) {
    const frame = (at / size) | 0;
    energies[frame] = (energies[frame] as number) + (values[at] as number) ** 2;
  }
  const pull = 1 - Math.exp(-1 / (EVEN_SECONDS * rateHz));
  const follow = (order: readonly number[]): Float64Array => {
    const followed = new Float64Array(count);
    let level = energies[order[0] ?? 0] ?? 0;
    for (const frame of order) {
      level += pull * ((energies[frame] as number) - level);
      followed[frame] = level;
    }
    return followed;
  };
  const order = Array.from({ length: count }, (_, frame) => frame);
  const onwards = follow(order);
  const back = follow(order.toReversed());
  for (let frame = 0; frame < count; frame++) {
    const level = 0.5 * ((onwards[frame] as number) + (back[frame] as number));
    const factor = 1 / (Math.sqrt(Math.sqrt(level)) + 1e-6);
    for (let at = frame * size; at < (frame + 1) * size; at++) values[at] = (values[at] as number) * factor;
  }
}
