import { buildFlowBand } from './flow-band.ts';
import type { FlowVectors } from './flow-vectors.ts';
import type { LagProducts } from './lag-products.ts';
import { buildLagProducts, correlateAt } from './lag-products.ts';

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
  /** Longest lag as a share of the clip. */
  readonly longestShare: number;
  /** How much of the cycle's correlation its half must reach before it counts against the cycle, and the cost of it. */
  readonly halfShare: number;
  readonly halfCost: number;
  /** Taken off per octave of lag: of two lengths that fit alike the shorter is the cycle. */
  readonly octaveCost: number;
}

/** Scores all lags between two lengths (seconds), both within what the clip can show. */
export function scoreLags(
  vectors: FlowVectors,
  [shortest, longest]: readonly [number, number],
  rule: ScoreRule,
): LagScores {
  const { frameCount, rateHz } = vectors;
  const first = shortest * rateHz;
  const last = Math.min(longest * rateHz, frameCount * rule.longestShare);
  // The longest is asked for too, so one lag may lie above it.
  const count = last >= first ? Math.ceil(Math.log2(last / first) * LAGS_PER_OCTAVE) + 1 : 0;
  const lags = Float64Array.from({ length: count }, (_, index) => first * 2 ** (index / LAGS_PER_OCTAVE));
  const scores = new Float32Array(frameCount * count);
  for (let octave = 0; octave < count; octave += LAGS_PER_OCTAVE) {
    const band = buildFlowBand(vectors, lags[octave] as number);
    const { stride } = band;
    const products = buildLagProducts(band, Math.ceil((6.5 * (lags[octave] as number)) / stride));
    for (let index = octave; index < Math.min(count, octave + LAGS_PER_OCTAVE); index++) {
      const lag = lags[index] as number;
      const parts = [lag / 2, lag / 3].filter((part) => part >= first).map((part) => part / stride);
      const candidate = { lag: lag / stride, parts };
      const cost = rule.octaveCost * Math.log2(lag / rateHz);
      for (let frame = 0; frame < frameCount; frame++) {
        scores[frame * count + index] =
          frame % stride === 0
            ? scoreLag(products, candidate, frame / stride, rule) - cost
            : (scores[(frame - 1) * count + index] as number);
      }
    }
  }
  return { lags, frameCount, scores };
}

interface Candidate {
  readonly lag: number;
  /** Parts of the lag that would be candidates of their own: half and a third, where they are not too short. */
  readonly parts: readonly number[];
}

function scoreLag(products: LagProducts, { lag, parts }: Candidate, frame: number, rule: ScoreRule): number {
  const width = Math.max(rule.windowSeconds * products.rateHz, rule.windowCycles * lag);
  const around = { frame, width, floorShare: rule.floorShare };
  const once = correlateAround(products, lag, around);
  if (Number.isNaN(once)) return -1;
  let held = 0;
  let weight = 0;
  for (const [times, share] of MULTIPLES) {
    const value = times === 1 ? once : correlateAround(products, times * lag, around);
    if (Number.isNaN(value)) continue;
    held += share * value;
    weight += share;
  }
  let part = 0;
  for (const shorter of parts) {
    const value = correlateAround(products, shorter, around);
    if (value > part) part = value;
  }
  const excess = Math.max(0, part - rule.halfShare * Math.max(0, once));
  return held / weight - (rule.halfCost * excess) / (1 - rule.halfShare);
}

/** A cycle's correlation must hold up at its multiples; how much each has to say. */
const MULTIPLES = [
  [1, 1],
  [2, 1],
  [3, 0.5],
] as const;

interface Around {
  readonly frame: number;
  /** In frames. */
  readonly width: number;
  readonly floorShare: number;
}

/** Correlation of pairs that lie evenly round a frame; near the clip's ends the nearest window that fits. */
function correlateAround(products: LagProducts, lag: number, around: Around): number {
  const pairs = products.frameCount - Math.ceil(lag);
  const width = Math.min(around.width, pairs);
  if (width < Math.min(around.width, 0.5 * lag)) return Number.NaN;
  const from = Math.min(pairs - width, Math.max(0, around.frame - lag / 2 - width / 2));
  return correlateAt(products, lag, { from, to: from + width }, around.floorShare);
}
