import type { LagProducts } from './lag-products.ts';
import { correlateAt } from './lag-products.ts';

/** How well every lag explains every moment of a clip as one cycle of a repeated movement. */
export interface LagScores {
  /** Candidate cycle lengths in frames, ascending, each the same ratio above the one before. */
  readonly lags: Float64Array;
  readonly frameCount: number;
  /** Score of lag `j` at frame `i` at `i × lags.length + j`; about -1 to 1. */
  readonly scores: Float32Array;
}

/** Lags per doubling; neighbours are 4.4 % apart. */
export const LAGS_PER_OCTAVE = 16;

/** Numbers that decide between a cycle, its half and its double. */
export interface ScoreRule {
  /** Share of the busy energy in every denominator. */
  readonly floorShare: number;
  /** Window in cycles, and its least length in seconds. */
  readonly windowCycles: number;
  readonly windowSeconds: number;
  /** How much of the cycle's correlation its half must reach before it counts against the cycle, and the cost of it. */
  readonly halfShare: number;
  readonly halfCost: number;
  /** Taken off per octave of lag: of two lengths that fit alike the shorter is the cycle. */
  readonly octaveCost: number;
}

/** Scores all lags between two lengths (seconds), both within what the clip can show. */
export function scoreLags(
  products: LagProducts,
  [shortest, longest]: readonly [number, number],
  rule: ScoreRule,
): LagScores {
  const { frameCount, rateHz } = products;
  const first = shortest * rateHz;
  const last = Math.min(longest * rateHz, products.longest - 1, frameCount * 0.75);
  const count = last > first ? Math.floor(Math.log2(last / first) * LAGS_PER_OCTAVE) + 1 : 0;
  const lags = Float64Array.from({ length: count }, (_, index) => first * 2 ** (index / LAGS_PER_OCTAVE));
  const scores = new Float32Array(frameCount * count);
  for (let index = 0; index < count; index++) {
    const lag = lags[index] as number;
    const cost = rule.octaveCost * Math.log2(lag / rateHz);
    for (let frame = 0; frame < frameCount; frame++) {
      scores[frame * count + index] = scoreLag(products, lag, frame, rule) - cost;
    }
  }
  return { lags, frameCount, scores };
}

function scoreLag(products: LagProducts, lag: number, frame: number, rule: ScoreRule): number {
  const width = Math.max(rule.windowSeconds * products.rateHz, rule.windowCycles * lag);
  const at = (apart: number) =>
    correlateAround(products, apart, { frame, width, floorShare: rule.floorShare });
  const once = at(lag);
  if (Number.isNaN(once)) return -1;
  const twice = at(2 * lag);
  const thrice = at(3 * lag);
  let held = once;
  let weight = 1;
  if (!Number.isNaN(twice)) {
    held += twice;
    weight += 1;
  }
  if (!Number.isNaN(thrice)) {
    held += 0.5 * thrice;
    weight += 0.5;
  }
  held /= weight;
  const half = at(lag / 2);
  const excess = Number.isNaN(half) ? 0 : Math.max(0, half - rule.halfShare * Math.max(0, once));
  return held - (rule.halfCost * excess) / (1 - rule.halfShare);
}

/** Correlation of pairs that lie evenly round a frame; near the clip's ends the nearest window that fits. */
function correlateAround(
  products: LagProducts,
  lag: number,
  around: { readonly frame: number; readonly width: number; readonly floorShare: number },
): number {
  const pairs = products.frameCount - Math.ceil(lag);
  const width = Math.min(around.width, pairs);
  if (width < Math.min(around.width, 0.5 * lag)) return Number.NaN;
  const from = Math.min(pairs - width, Math.max(0, around.frame - lag / 2 - width / 2));
  return correlateAt(products, lag, { from, to: from + width }, around.floorShare);
}
