import { measureTravel } from '../signal/cycle-travel.ts';
import { buildFlowVectors } from '../signal/flow-vectors.ts';
import { findLagPath } from '../signal/lag-path.ts';
import { scoreLags } from '../signal/lag-scores.ts';
import type { MotionSeries } from '../signal/motion-series.ts';
import type { CycleRun } from './cycle-runs.ts';
import { listCycleRuns } from './cycle-runs.ts';
import type { RepsOptions } from './reps-finding.ts';
import type { RepsRule } from './reps-rule.ts';
import type { CycleTrack } from './track-cycles.ts';
import { trackCycles } from './track-cycles.ts';

/** Shortest and longest cycle that is looked for where the exercise does not say, in seconds. */
const ANY_CYCLE = [0.22, 9] as const;

/** What was seen of a repeated movement, before it is decided whether it is one. */
export interface RepsStudy {
  /** The best that could be followed. */
  readonly track: CycleTrack;
  readonly runs: readonly CycleRun[];
  /** Cycles of all runs, fractions allowed. */
  readonly cycles: number;
  /** Mean score of the runs times the square root of their cycles; see {@link RepsRule.leastTrust}. */
  readonly trust: number;
  /** How far the movement goes from turn to turn, against the least that counts at its pace; 1 is just enough. */
  readonly reach: number;
}

/** Looks for the movement that repeats most; null where nothing does at all. */
export function studyReps(motion: MotionSeries, options: RepsOptions, rule: RepsRule): RepsStudy | null {
  const vectors = buildFlowVectors(motion);
  const scores = scoreLags(vectors, options.cycleSeconds ?? ANY_CYCLE, rule.score);
  const lags = findLagPath(scores, rule.path);
  if (lags.evidence <= 0) return null;
  const lagAt = Float64Array.from(lags.lagAt, (index) => scores.lags[index] ?? 0);
  const track = trackCycles(vectors, lagAt, lags.scoreAt, rule);
  const runs = listCycleRuns(track, rule);
  const cycles = runs.reduce((sum, run) => sum + run.cycles, 0);
  const score = runs.reduce((sum, run) => sum + run.cycles * run.score, 0) / Math.max(1e-9, cycles);
  return {
    track,
    runs,
    cycles,
    trust: score * Math.sqrt(cycles),
    reach: measureReach(motion, track, runs, rule),
  };
}

function measureReach(
  motion: MotionSeries,
  { path, stride, frameSeconds }: CycleTrack,
  runs: readonly CycleRun[],
  rule: RepsRule,
): number {
  const travel = measureTravel(motion, (frame) => path.phases[Math.floor(frame / stride)] ?? Number.NaN);
  const cycles = runs.reduce((sum, run) => sum + run.cycles, 0);
  const seconds = runs.reduce((sum, { first, last }) => sum + (last - first + 1) * frameSeconds, 0);
  const cycleSeconds = seconds / Math.max(1e-9, cycles);
  return travel / Math.max(rule.leastTravel, rule.leastSpeed * cycleSeconds);
}
