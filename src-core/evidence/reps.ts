import { buildFlowVectors } from '../signal/flow-vectors.ts';
import { findLagPath } from '../signal/lag-path.ts';
import { buildLagProducts } from '../signal/lag-products.ts';
import { scoreLags } from '../signal/lag-scores.ts';
import type { MotionSeries } from '../signal/motion-series.ts';
import type { RepsFinding, RepsOptions } from './reps-finding.ts';

/** Shortest and longest cycle that is looked for where the exercise does not say, in seconds. */
const ANY_CYCLE = [0.22, 9] as const;

/** Counts the reps of a clip from its motion alone; see {@link RepsFinding}. */
export function findReps(motion: MotionSeries, options: RepsOptions): RepsFinding {
  const { rateHz, frameCount } = motion;
  const range = options.cycleSeconds ?? ANY_CYCLE;
  const vectors = buildFlowVectors(motion);
  const products = buildLagProducts(vectors, Math.ceil(13 * rateHz));
  const scores = scoreLags(products, range, {
    floorShare: 0.2,
    windowCycles: 1.25,
    windowSeconds: 1,
    halfShare: 0.6,
    halfCost: 0.5,
    octaveCost: 0.02,
  });
  const path = findLagPath(scores, { floor: 0.12, moveCost: 0.1 });
  const cycleSecondsAt = new Float32Array(frameCount);
  const strength = new Float32Array(frameCount);
  const boundaries: number[] = [];
  let phase = 1;
  for (let frame = 0; frame < frameCount; frame++) {
    const lag = scores.lags[path.lagAt[frame] ?? 0] ?? 0;
    const score = path.scoreAt[frame] ?? 0;
    if (lag === 0 || score < 0.12) continue;
    cycleSecondsAt[frame] = lag / rateHz;
    strength[frame] = Math.min(1, Math.max(0, score));
    phase += 1 / lag;
    if (phase >= 1) {
      boundaries.push(frame / rateHz);
      phase -= 1;
    }
  }
  const trace = { rateHz, cycleSecondsAt, strength, signal: new Float32Array(frameCount) };
  const cycles = boundaries.length - 1;
  if (cycles < 2) {
    const empty = { timesSeconds: [], repConfidences: [], cycleSeconds: null, spanSeconds: null, runs: [] };
    return { count: null, confidence: 0.5, ...empty, trace };
  }
  const lengths = boundaries.slice(1).map((at, index) => at - (boundaries[index] ?? 0));
  const times =
    options.counting === 'side'
      ? boundaries.slice(1).flatMap((at, index) => [((boundaries[index] ?? 0) + at) / 2, at])
      : boundaries.slice(1);
  return {
    count: times.length,
    confidence: Math.min(1, path.evidence / frameCount / 0.4),
    timesSeconds: times,
    repConfidences: times.map(() => 0.5),
    cycleSeconds: lengths.sort((one, other) => one - other)[lengths.length >> 1] ?? null,
    spanSeconds: [boundaries[0] ?? 0, boundaries.at(-1) ?? 0],
    runs: [{ boundariesSeconds: boundaries, confidences: lengths.map(() => 0.5) }],
    trace,
  };
}
