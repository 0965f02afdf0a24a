import type { LagScores } from './lag-scores.ts';

/** The cycle length through a clip, frame by frame. */
export interface LagPath {
  /** Index of the lag in {@link LagScores.lags} at every frame. */
  readonly lagAt: Int32Array;
  /** Sum of what the scores lie above the floor: the evidence for the whole path, in frames. */
  readonly evidence: number;
}

/** What a path may do, and what it costs. */
export interface PathRule {
  /** Score below which a frame is no evidence for anything. */
  readonly floor: number;
  /** Cost of moving by one lag (4.4 %) from one frame to the next. */
  readonly moveCost: number;
}

/**
 * The path of lags with the most evidence over the whole clip (Viterbi): at each frame it earns its score above the
 * floor, or nothing; it moves to a neighbouring lag at a cost, through pauses too, so that one clip shows one movement.
 */
export function findLagPath({ lags, frameCount, scores }: LagScores, rule: PathRule): LagPath {
  const count = lags.length;
  const from = new Int8Array(frameCount * count);
  let best = new Float64Array(count);
  let next = new Float64Array(count);
  for (let frame = 0; frame < frameCount; frame++) {
    for (let index = 0; index < count; index++) {
      const at = frame * count + index;
      const move = findMove(best, index, rule.moveCost);
      from[at] = move;
      const reached = (best[index + move] as number) - (move === 0 ? 0 : rule.moveCost);
      next[index] = reached + Math.max(0, (scores[at] as number) - rule.floor);
    }
    [best, next] = [next, best];
  }
  return tracePath(from, best, frameCount);
}

/** From which neighbour a lag is best reached: -1, 0 (itself) or 1. */
function findMove(best: Float64Array, index: number, cost: number): number {
  const stay = best[index] as number;
  const lower = (best[index - 1] ?? Number.NEGATIVE_INFINITY) - cost;
  const upper = (best[index + 1] ?? Number.NEGATIVE_INFINITY) - cost;
  if (stay >= lower && stay >= upper) return 0;
  return lower >= upper ? -1 : 1;
}

function tracePath(from: Int8Array, best: Float64Array, frameCount: number): LagPath {
  const count = best.length;
  let index = 0;
  for (let other = 1; other < count; other++) {
    if ((best[other] as number) > (best[index] as number)) index = other;
  }
  const evidence = best[index] ?? 0;
  const lagAt = new Int32Array(frameCount);
  for (let frame = frameCount - 1; frame >= 0 && count > 0; frame--) {
    lagAt[frame] = index;
    index += from[frame * count + index] as number;
  }
  return { lagAt, evidence };
}
