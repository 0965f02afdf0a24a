import type { FlowVectors } from './flow-vectors.ts';

/** What one cycle of a movement looks like on average: a flow vector for each of its moments. */
export interface PhaseTemplate {
  /** Moments that the cycle is cut into. */
  readonly bins: number;
  readonly size: number;
  /** Mean vector of each bin, bin by bin. */
  readonly means: Float32Array;
  /** How many frames stand behind each bin, fractions allowed. */
  readonly weights: Float64Array;
  /** Cycles that the means were taken over. */
  readonly cycles: number;
  /** Mean of the squared lengths of the mean vectors. */
  readonly energy: number;
}

/** Neighbouring moments lend each other a quarter: as much blur as the frames have. */
const BLUR = [0.25, 0.5, 0.25];

/**
 * Averages frames by their phase. `phases` gives every frame's phase in cycles, ever growing; NaN leaves a frame out.
 */
export function buildPhaseTemplate(vectors: FlowVectors, phases: Float64Array, bins: number): PhaseTemplate {
  const { values, size, frameCount } = vectors;
  const sums = new Float32Array(bins * size);
  const weights = new Float64Array(bins);
  let travelled = 0;
  for (let frame = 0; frame < frameCount; frame++) {
    const phase = phases[frame] as number;
    if (Number.isNaN(phase)) continue;
    const step = phase - (phases[frame - 1] ?? Number.NaN);
    if (step > 0) travelled += step;
    const place = (phase - Math.floor(phase)) * bins;
    const bin = Math.floor(place) % bins;
    addFrame(sums, bin * size, values.subarray(frame * size, (frame + 1) * size), 1 - (place % 1));
    addFrame(sums, ((bin + 1) % bins) * size, values.subarray(frame * size, (frame + 1) * size), place % 1);
    weights[bin] = (weights[bin] as number) + 1 - (place % 1);
    weights[(bin + 1) % bins] = (weights[(bin + 1) % bins] as number) + (place % 1);
  }
  return finishTemplate({ bins, size, cycles: Math.max(1, travelled) }, sums, weights);
}

function addFrame(sums: Float32Array, at: number, frame: Float32Array, weight: number): void {
  for (let index = 0; index < frame.length; index++) {
    sums[at + index] = (sums[at + index] as number) + weight * (frame[index] as number);
  }
}

function finishTemplate(
  shape: { readonly bins: number; readonly size: number; readonly cycles: number },
  sums: Float32Array,
  counts: Float64Array,
): PhaseTemplate {
  const { bins, size } = shape;
  const means = new Float32Array(bins * size);
  const weights = new Float64Array(bins);
  let energy = 0;
  for (let bin = 0; bin < bins; bin++) {
    for (const [index, share] of BLUR.entries()) {
      const other = (bin + index - 1 + bins) % bins;
      addFrame(means, bin * size, sums.subarray(other * size, (other + 1) * size), share);
      weights[bin] = (weights[bin] as number) + share * (counts[other] as number);
    }
    const scale = 1 / Math.max(1e-9, weights[bin] as number);
    for (let at = bin * size; at < (bin + 1) * size; at++) {
      means[at] = (means[at] as number) * scale;
      energy += (means[at] as number) ** 2;
    }
  }
  return { ...shape, means, weights, energy: energy / bins };
}
