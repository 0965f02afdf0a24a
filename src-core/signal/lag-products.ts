import type { FlowVectors } from './flow-vectors.ts';

/** Running sums of products of frames that lie some lag apart: any window's correlation takes four look-ups. */
export interface LagProducts {
  readonly rateHz: number;
  readonly frameCount: number;
  /** Longest lag, in frames. */
  readonly longest: number;
  /** `sums[lag][t]`: sum over frames before `t` of frame · (frame + lag); lag 0 is the energy. */
  readonly sums: readonly Float64Array[];
  /** Upper tenth of the frames' energies: what counts as movement in this clip. */
  readonly busyEnergy: number;
}

/** Products of all pairs of frames up to `longest` frames apart. */
export function buildLagProducts(vectors: FlowVectors, longest: number): LagProducts {
  const { frameCount, size, values, rateHz } = vectors;
  const most = Math.max(0, Math.min(longest, frameCount - 1));
  const sums: Float64Array[] = [];
  for (let lag = 0; lag <= most; lag++) {
    const running = new Float64Array(frameCount + 1);
    for (let frame = 0; frame + lag < frameCount; frame++) {
      running[frame + 1] =
        (running[frame] as number) + multiplyFrames(values, frame * size, lag * size, size);
    }
    running.fill(running[frameCount - lag] as number, frameCount - lag);
    sums.push(running);
  }
  return { rateHz, frameCount, longest: most, sums, busyEnergy: findBusyEnergy(sums[0]) };
}

function multiplyFrames(values: Float32Array, first: number, apart: number, size: number): number {
  let sum = 0;
  const end = first + size;
  for (let at = first; at < end; at++) sum += (values[at] as number) * (values[at + apart] as number);
  return sum;
}

function findBusyEnergy(running: Float64Array | undefined): number {
  if (!running) return 0;
  const energies = Float64Array.from(
    { length: running.length - 1 },
    (_, frame) => (running[frame + 1] as number) - (running[frame] as number),
  ).sort();
  return energies[Math.floor(energies.length * 0.9)] ?? 0;
}

/** A window of first frames, `from` to before `to`; the second frames lie a lag later. */
export interface PairWindow {
  readonly from: number;
  readonly to: number;
}

/**
 * Correlation, -1 to 1, of the frames of a window with those `lag` frames later (fractions allowed): products over the
 * geometric mean of both energies, with `floorShare` of the busy energy added so that idle stretches score low.
 * NaN where the clip is too short for it.
 */
export function correlateAt(
  products: LagProducts,
  lag: number,
  window: PairWindow,
  floorShare: number,
): number {
  const ahead = lag < FINE_LAG ? Math.floor(lag) + 2 : Math.ceil(lag);
  const from = Math.max(0, Math.round(window.from));
  const to = Math.min(products.frameCount - ahead, Math.round(window.to));
  if (to <= from || ahead > products.longest) return Number.NaN;
  const middle = Math.round(lag);
  const energy = Math.sqrt(
    sumBetween(products.sums[0], from, to) * sumBetween(products.sums[0], from + middle, to + middle),
  );
  return sumAtLag(products, lag, from, to) / (energy + floorShare * products.busyEnergy * (to - from) + 1e-9);
}

/** Lags below this are read from four neighbours: a cycle of four frames is no straight line between two of them. */
const FINE_LAG = 12;

function sumAtLag({ sums }: LagProducts, lag: number, from: number, to: number): number {
  const whole = Math.floor(lag);
  const part = lag - whole;
  const atWhole = sumBetween(sums[whole], from, to);
  if (part === 0) return atWhole;
  const atNext = sumBetween(sums[whole + 1], from, to);
  if (lag >= FINE_LAG) return (1 - part) * atWhole + part * atNext;
  // Cubic interpolation after Lagrange.
  const before = (-part * (1 - part) * (2 - part)) / 6;
  const here = ((1 + part) * (1 - part) * (2 - part)) / 2;
  const next = ((1 + part) * part * (2 - part)) / 2;
  const after = (-(1 + part) * part * (1 - part)) / 6;
  return (
    before * sumBetween(sums[Math.abs(whole - 1)], from, to) +
    here * atWhole +
    next * atNext +
    after * sumBetween(sums[whole + 2], from, to)
  );
}

function sumBetween(running: Float64Array | undefined, from: number, to: number): number {
  return running ? (running[Math.min(running.length - 1, to)] as number) - (running[from] as number) : 0;
}
