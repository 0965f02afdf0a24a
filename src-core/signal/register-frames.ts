import type { CameraStep } from './camera-step.ts';
import { createCameraStep, STEP, STEP_SIZE } from './camera-step.ts';
import type { LumaLevel } from './luma-level.ts';
import { solveSymmetric } from './solve-symmetric.ts';
import { warpLuma } from './warp-luma.ts';

/** How one picture lies on another, and space to find that out in; made once for pictures of one size. */
export interface Registration {
  readonly step: CameraStep;
  /** Luma difference at which a pixel lost most of its say in the last round. */
  width: number;
  /** The later picture brought back by the step, or one shortly before it, as {@link warpLuma} leaves it. */
  readonly warped: Float32Array;
  readonly matrix: Float64Array;
  readonly right: Float64Array;
  readonly slopes: Float64Array;
  readonly histogram: Uint32Array;
}

/** Space for registering pictures of up to `area` pixels. */
export function createRegistration(area: number): Registration {
  return {
    step: createCameraStep(),
    width: SMALLEST_WIDTH,
    warped: new Float32Array(area),
    matrix: new Float64Array(STEP_SIZE * STEP_SIZE),
    right: new Float64Array(STEP_SIZE),
    slopes: new Float64Array(STEP_SIZE),
    histogram: new Uint32Array(256),
  };
}

/** Bins of the histogram of luma differences per luma step. */
const BINS_PER_STEP = 8;
/** From the median of absolute differences to the width at which a pixel loses most of its say. */
const MEDIAN_TO_WIDTH = 1.4826 * 2;
/** Narrower than this is rounding and coding noise, in luma steps. */
const SMALLEST_WIDTH = 1;

/**
 * Betters `work.step` so that the still parts of `after` fall on `before`: iteratively reweighted Lucas–Kanade
 * (Baker & Matthews, "Lucas–Kanade 20 Years On", IJCV 56, 2004), Geman–McClure weights whose width follows the median
 * difference, so that people who move have little say. `work.warped` is left at the last but one step.
 */
export function registerFrames(
  before: LumaLevel,
  after: LumaLevel,
  work: Registration,
  rounds: number,
): void {
  const { step } = work;
  for (let round = 0; round < rounds; round++) {
    warpLuma(after, step, work.warped);
    work.width = Math.max(SMALLEST_WIDTH, MEDIAN_TO_WIDTH * findMedianDifference(before, work));
    gatherEquations(before, work, 1 / (work.width * work.width));
    solveSymmetric(work.matrix, work.right, STEP_SIZE);
    for (let index = 0; index < STEP_SIZE; index++) {
      step[index] = (step[index] as number) - (work.right[index] as number);
    }
    keepWithinReason(step);
  }
}

/**
 * How much of `before` does not lie still under `work.warped`: the loss that {@link registerFrames} makes small, a mean of
 * all regions that have something to hold on to. 0 where all fits; only comparable at the same width.
 */
export function measureMisfit(before: LumaLevel, work: Registration, width: number): number {
  const { luma } = before;
  const { columns, columnOf, rowOf, votes } = before.regions;
  const inverseSquare = 1 / (width * width);
  let misfit = 0;
  let total = 0;
  for (let row = 1; row < before.height - 1; row++) {
    const first = (rowOf[row] as number) * columns;
    for (let column = 1; column < before.width - 1; column++) {
      const at = row * before.width + column;
      const difference = (work.warped[at] as number) - (luma[at] as number);
      if (Number.isNaN(difference)) continue;
      const vote = votes[first + (columnOf[column] as number)] as number;
      const square = difference * difference;
      misfit += (vote * square) / (1 + square * inverseSquare);
      total += vote;
    }
  }
  return total === 0 ? 0 : misfit / total;
}

/** Median of the absolute luma differences between `before` and `work.warped`, in luma steps, to an eighth. */
function findMedianDifference(before: LumaLevel, work: Registration): number {
  const { histogram, warped } = work;
  const { luma } = before;
  histogram.fill(0);
  let count = 0;
  for (let at = 0; at < luma.length; at++) {
    const difference = Math.abs((warped[at] as number) - (luma[at] as number));
    if (Number.isNaN(difference)) continue;
    const bin = Math.min(255, (difference * BINS_PER_STEP) | 0);
    histogram[bin] = (histogram[bin] as number) + 1;
    count++;
  }
  let seen = 0;
  let bin = 0;
  while (bin < 255 && seen + (histogram[bin] as number) < count / 2) seen += histogram[bin++] as number;
  return (bin + 0.5) / BINS_PER_STEP;
}

/** Sums up the weighted normal equations over all pixels seen in both pictures; upper triangle only. */
function gatherEquations(before: LumaLevel, work: Registration, inverseSquare: number): void {
  const { luma, slopeX, slopeY, width, height } = before;
  const { columns, columnOf, rowOf, votes } = before.regions;
  const { warped, matrix, right, slopes } = work;
  matrix.fill(0);
  right.fill(0);
  const half = width / 2;
  for (let row = 1; row < height - 1; row++) {
    const y = (row - (height - 1) / 2) / half;
    const end = (row + 1) * width - 1;
    const first = (rowOf[row] as number) * columns;
    let x = (1 - (width - 1) / 2) / half;
    for (let at = row * width + 1; at < end; at++, x += 1 / half) {
      const here = luma[at] as number;
      const difference = (warped[at] as number) - here;
      if (Number.isNaN(difference)) continue;
      const loss = 1 + difference * difference * inverseSquare;
      const vote = votes[first + (columnOf[at - row * width] as number)] as number;
      const weight = vote / (loss * loss);
      const dx = (slopeX[at] as number) * half;
      const dy = (slopeY[at] as number) * half;
      slopes[STEP.moveX] = dx;
      slopes[STEP.moveY] = dy;
      slopes[STEP.zoom] = dx * x + dy * y;
      slopes[STEP.turn] = dy * x - dx * y;
      slopes[STEP.gain] = -here;
      slopes[STEP.offset] = -1;
      addPixel(work, weight, difference);
    }
  }
}

/** Once for every pixel and round, thousands of times a frame: written out, it takes half the time of loops. */
function addPixel({ matrix, right, slopes }: Registration, weight: number, difference: number): void {
  const a = slopes[0] as number;
  const b = slopes[1] as number;
  const c = slopes[2] as number;
  const d = slopes[3] as number;
  const e = slopes[4] as number;
  const f = slopes[5] as number;
  const wa = weight * a;
  matrix[0] = (matrix[0] as number) + wa * a;
  matrix[1] = (matrix[1] as number) + wa * b;
  matrix[2] = (matrix[2] as number) + wa * c;
  matrix[3] = (matrix[3] as number) + wa * d;
  matrix[4] = (matrix[4] as number) + wa * e;
  matrix[5] = (matrix[5] as number) + wa * f;
  right[0] = (right[0] as number) + wa * difference;
  const wb = weight * b;
  matrix[7] = (matrix[7] as number) + wb * b;
  matrix[8] = (matrix[8] as number) + wb * c;
  matrix[9] = (matrix[9] as number) + wb * d;
  matrix[10] = (matrix[10] as number) + wb * e;
  matrix[11] = (matrix[11] as number) + wb * f;
  right[1] = (right[1] as number) + wb * difference;
  const wc = weight * c;
  matrix[14] = (matrix[14] as number) + wc * c;
  matrix[15] = (matrix[15] as number) + wc * d;
  matrix[16] = (matrix[16] as number) + wc * e;
  matrix[17] = (matrix[17] as number) + wc * f;
  right[2] = (right[2] as number) + wc * difference;
  const wd = weight * d;
  matrix[21] = (matrix[21] as number) + wd * d;
  matrix[22] = (matrix[22] as number) + wd * e;
  matrix[23] = (matrix[23] as number) + wd * f;
  right[3] = (right[3] as number) + wd * difference;
  const we = weight * e;
  matrix[28] = (matrix[28] as number) + we * e;
  matrix[29] = (matrix[29] as number) + we * f;
  right[4] = (right[4] as number) + we * difference;
  const wf = weight * f;
  matrix[35] = (matrix[35] as number) + wf * f;
  right[5] = (right[5] as number) + wf * difference;
}

/** A hand-held camera does not do more in a fifteenth of a second; beyond it the search has lost its way. */
function keepWithinReason(step: CameraStep): void {
  limit(step, STEP.moveX, 0.4);
  limit(step, STEP.moveY, 0.4);
  limit(step, STEP.zoom, 0.15);
  limit(step, STEP.turn, 0.15);
  limit(step, STEP.gain, 0.4);
  limit(step, STEP.offset, 80);
}

function limit(step: CameraStep, index: number, most: number): void {
  step[index] = Math.min(most, Math.max(-most, step[index] as number));
}
