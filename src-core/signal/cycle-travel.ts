import type { MotionSeries } from './motion-series.ts';

/** Cells that must move as far: one alone may be a flickering lamp. */
const RANK = 2;
const BINS = 16;

/**
 * How far the movement goes: flow averaged over all cycles moment by moment, laid end to end, from one turn to the other,
 * in the cell that moves third most; in pixels of an 80-pixel frame. `phaseAt` gives each frame's phase in cycles (NaN:
 * not in the movement).
 */
export function measureTravel(motion: MotionSeries, phaseAt: (frame: number) => number): number {
  const { frameCount, columns, rows, u, v } = motion;
  const cells = columns * rows;
  const sums = new Float64Array(BINS * cells * 2);
  const counts = new Float64Array(BINS);
  let first = Number.NaN;
  let travelled = 0;
  for (let frame = 1; frame < frameCount; frame++) {
    const phase = phaseAt(frame);
    if (Number.isNaN(phase)) continue;
    if (phase > first) travelled += phase - first;
    first = phase;
    const bin = Math.floor((phase - Math.floor(phase)) * BINS) % BINS;
    counts[bin] = (counts[bin] as number) + 1;
    for (let cell = 0; cell < cells; cell++) {
      const at = 2 * (bin * cells + cell);
      sums[at] = (sums[at] as number) + (u[frame * cells + cell] as number);
      sums[at + 1] = (sums[at + 1] as number) + (v[frame * cells + cell] as number);
    }
  }
  const frames = counts.reduce((sum, count) => sum + count, 0);
  // Every bin stands for the same part of a cycle, however many frames fell into it.
  const perBin = frames / BINS / Math.max(1, travelled);
  for (let at = 0; at < sums.length; at++) {
    const bin = Math.floor(at / (2 * cells));
    sums[at] = ((sums[at] as number) * perBin) / Math.max(1, counts[bin] as number);
  }
  const travels = Float64Array.from({ length: cells }, (_, cell) =>
    Math.hypot(findReach(sums, cells, 2 * cell), findReach(sums, cells, 2 * cell + 1)),
  ).sort();
  const scale = 80 / Math.max(motion.width, motion.height);
  return (travels[Math.max(0, cells - 1 - RANK)] ?? 0) * scale;
}

/** From the lowest to the highest point of a path whose steps stand `2 × cells` apart, without its drift. */
function findReach(sums: Float64Array, cells: number, first: number): number {
  let mean = 0;
  for (let bin = 0; bin < BINS; bin++) mean += (sums[2 * bin * cells + first] as number) / BINS;
  let at = 0;
  let low = 0;
  let high = 0;
  for (let bin = 0; bin < BINS; bin++) {
    at += (sums[2 * bin * cells + first] as number) - mean;
    low = Math.min(low, at);
    high = Math.max(high, at);
  }
  return high - low;
}
