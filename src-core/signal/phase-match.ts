import type { FlowVectors } from './flow-vectors.ts';
import type { PhaseTemplate } from './phase-template.ts';

/** How well every moment of a cycle explains every frame. */
export interface PhaseMatch {
  readonly bins: number;
  readonly frameCount: number;
  /**
   * At frame `i` and bin `b`, place `i × bins + b`: what the template takes off the frame's energy, over the template's
   * mean energy (or over a share of what counts as movement in the clip, where that is more). About 1 where it fits, 0 where both are still, negative where a standstill explains the frame better.
   */
  readonly gains: Float32Array;
  /** Squared length of every frame, in the same unit as `gains`. */
  readonly energies: Float32Array;
  /** Squared length of every bin of the template, in the same unit. */
  readonly lengths: Float64Array;
}

/** Numbers that say what counts as the movement. */
export interface MatchRule {
  /** 1 asks for the full size of the movement, less lets smaller ones count: a frame of half this size gains nothing. */
  readonly sizeShare: number;
  /** Least unit of gain, as a share of the upper tenth of the frames' energies: noise must not stand for a movement. */
  readonly busyShare: number;
  /** Gains are kept within minus and plus this, so that one frame with somebody passing cannot decide. */
  readonly most: number;
}

/**
 * Matches frames against a template. A frame that the template was made from (its phase in `phases`, NaN: none) is
 * matched without its own cycle's part, so that noise does not explain itself.
 */
export function matchPhases(
  vectors: FlowVectors,
  template: PhaseTemplate,
  phases: Float64Array,
  rule: MatchRule,
): PhaseMatch {
  const { frameCount, size, values } = vectors;
  const { bins, means, weights, energy, cycles } = template;
  const lengths = Float64Array.from({ length: bins }, (_, bin) =>
    multiply(means.subarray(bin * size, (bin + 1) * size), means, bin * size),
  );
  const gains = new Float32Array(frameCount * bins);
  const energies = new Float32Array(frameCount);
  for (let frame = 0; frame < frameCount; frame++) {
    const vector = values.subarray(frame * size, (frame + 1) * size);
    energies[frame] = multiply(vector, vector, 0);
  }
  const busy = energies.slice().sort()[Math.floor(0.9 * frameCount)] ?? 0;
  const unit = Math.max(energy, rule.busyShare * busy, 1e-12);
  for (let frame = 0; frame < frameCount; frame++) {
    const vector = values.subarray(frame * size, (frame + 1) * size);
    const own = energies[frame] as number;
    for (let bin = 0; bin < bins; bin++) {
      let product = multiply(vector, means, bin * size);
      const share = getOwnShare(phases[frame] as number, bin, bins) / cycles;
      if (share > 0 && share < 0.9) product = (product - share * own) / (1 - share);
      const gain = (2 * product - rule.sizeShare * (lengths[bin] as number)) / unit;
      gains[frame * bins + bin] =
        (weights[bin] as number) > 0 ? Math.min(rule.most, Math.max(-rule.most, gain)) : 0;
    }
  }
  return {
    bins,
    frameCount,
    gains,
    energies: energies.map((value) => value / unit),
    lengths: lengths.map((value) => value / unit),
  };
}

/** How much of a bin's part of its own cycle a frame makes up: 1 at its own phase, 0 from two bins on. */
function getOwnShare(phase: number, bin: number, bins: number): number {
  if (Number.isNaN(phase)) return 0;
  const apart = Math.abs((((phase - Math.floor(phase)) * bins - bin + 1.5 * bins) % bins) - 0.5 * bins);
  return Math.max(0, 1 - apart / 2);
}

function multiply(vector: Float32Array, others: Float32Array, first: number): number {
  let sum = 0;
  for (let at = 0; at < vector.length; at++) sum += (vector[at] as number) * (others[first + at] as number);
  return sum;
}
