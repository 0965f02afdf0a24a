import { STEPS_PER_CYCLE } from './cycle-samples.ts';

/** Amplitude and phase of a signal at the rep rate, as the two parts of a complex number. */
export interface Phasor {
  readonly re: number;
  readonly im: number;
}

const TURN = (2 * Math.PI) / STEPS_PER_CYCLE;

const COS = Float64Array.from({ length: STEPS_PER_CYCLE }, (_, step) => Math.cos((step + 0.5) * TURN));
const SIN = Float64Array.from({ length: STEPS_PER_CYCLE }, (_, step) => Math.sin((step + 0.5) * TURN));

/**
 * Complex demodulation at the tracked rate (P. Bloomfield, "Fourier Analysis of Time Series", chapter on complex
 * demodulation; from memory): the signal times exp(-iθ), averaged over exactly one cycle from step `from` on, so that
 * its mean and all whole multiples of the rate drop out. `signal` holds one value a step, its first step being where a
 * cycle begins; outside it there is silence. A signal a quarter of a cycle behind another has a phase π/2 lower; a
 * cosine of height 2 has an amplitude of 1.
 */
export function demodulate(signal: ArrayLike<number>, from: number): Phasor {
  let re = 0;
  let im = 0;
  for (let step = from; step < from + STEPS_PER_CYCLE; step++) {
    const value = signal[step] ?? 0;
    const turn = ((step % STEPS_PER_CYCLE) + STEPS_PER_CYCLE) % STEPS_PER_CYCLE;
    re += value * (COS[turn] ?? 0);
    im -= value * (SIN[turn] ?? 0);
  }
  return { re: re / STEPS_PER_CYCLE, im: im / STEPS_PER_CYCLE };
}

/** Strength of a phasor, in the units of its signal, 0 or more. */
export function getAmplitude({ re, im }: Phasor): number {
  return Math.hypot(re, im);
}

/** Where in the cycle a phasor stands, in radians, -π to π; 0 for silence. */
export function getPhase({ re, im }: Phasor): number {
  return re === 0 && im === 0 ? 0 : Math.atan2(im, re);
}

/** A difference of phases brought to the nearest turn: radians, -π to π. */
export function wrapPhase(phase: number): number {
  return phase - 2 * Math.PI * Math.round(phase / (2 * Math.PI));
}

/**
 * Lag that belongs to a phase at a cycle length: a phase below the other's is a lag behind it (positive seconds), as
 * φ = 360°·f·lag; within half a cycle either way.
 */
export function findLagSeconds(phase: number, cycleSeconds: number): number {
  // `0 -` keeps a phase of 0 from becoming a lag of minus 0.
  return 0 - (wrapPhase(phase) * cycleSeconds) / (2 * Math.PI);
}
