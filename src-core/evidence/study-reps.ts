import { measureTravel } from '../signal/cycle-travel.ts';
import { buildFlowVectors } from '../signal/flow-vectors.ts';
import { findLagPath } from '../signal/lag-path.ts';
import type { LagScores } from '../signal/lag-scores.ts';
import { LAGS_PER_OCTAVE, scoreLags } from '../signal/lag-scores.ts';
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
  /** How firmly the evidence stands: 1 just enough, below 1 not enough to speak of reps. */
  readonly standing: number;
}

/** How many movements are looked at in turn. */
const TRIES = 3;

/**
 * Looks for the movement that repeats most, and where that does not stand up (a sway of the camera, a pulse of the
 * encoder), for the next of another length. Gives the first that stands, else the one nearest to it; null where nothing
 * repeats at all.
 */
export function studyReps(motion: MotionSeries, options: RepsOptions, rule: RepsRule): RepsStudy | null {
  const vectors = buildFlowVectors(motion);
  const scores = scoreLags(vectors, options.cycleSeconds ?? ANY_CYCLE, rule.score);
  let best: RepsStudy | null = null;
  for (let attempt = 0; attempt < TRIES; attempt++) {
    const lags = findLagPath(scores, rule.path);
    if (lags.evidence <= 0) break;
    const lagAt = Float64Array.from(lags.lagAt, (index) => scores.lags[index] ?? 0);
    const study = weigh(motion, trackCycles(vectors, lagAt, lags.scoreAt, rule), rule);
    if (!best || study.standing > best.standing) best = study;
    if (best.standing >= 1) break;
    silenceLags(scores, lags.lagAt);
  }
  return best;
}

function weigh(motion: MotionSeries, track: CycleTrack, rule: RepsRule): RepsStudy {
  const runs = listCycleRuns(track, rule);
  const cycles = runs.reduce((sum, run) => sum + run.cycles, 0);
  const score = runs.reduce((sum, run) => sum + run.cycles * run.score, 0) / Math.max(1e-9, cycles);
  const trust = score * Math.sqrt(cycles);
  const reach = measureReach(motion, track, runs, rule);
  const standing = cycles >= rule.leastCycles ? Math.min(trust / rule.leastTrust, reach) : 0;
  return { track, runs, cycles, trust, reach, standing };
}

/** Lags to either side of a path that stand for the same movement. */
const SAME_MOVEMENT = LAGS_PER_OCTAVE / 4;

function silenceLags({ lags, scores }: LagScores, lagAt: Int32Array): void {
  const from = lagAt.reduce((least, index) => Math.min(least, index)) - SAME_MOVEMENT;
  const to = lagAt.reduce((most, index) => Math.max(most, index)) + SAME_MOVEMENT;
  for (let at = 0; at < scores.length; at++) {
    const index = at % lags.length;
    if (index >= from && index <= to) scores[at] = -1;
  }
}

function measureReach(
  motion: MotionSeries,
  { path, stride, frameSeconds }: CycleTrack,
  runs: readonly CycleRun[],
  rule: RepsRule,
): number {
  const travel = measureTravel(motion, (frame) => path.phases[Math.floor(frame / stride)] ?? Number.NaN);
  const cycles = Math.max(
    1e-9,
    runs.reduce((sum, run) => sum + run.cycles, 0),
  );
  let seconds = 0;
  let swing = 0;
  for (const { first, last } of runs) {
    seconds += (last - first + 1) * frameSeconds;
    swing += measureSwing(motion, first * stride, last * stride);
  }
  const least = Math.max(
    rule.leastTravel,
    (rule.leastSpeed * seconds) / cycles,
    (rule.leastOfSwing * swing) / cycles,
  );
  return travel / least;
}

/** How far the camera went between two frames, there and back alike, in pixels of an 80-pixel frame. */
function measureSwing({ camera, width, height }: MotionSeries, from: number, to: number): number {
  let swing = 0;
  for (let frame = from; frame <= to; frame++) {
    swing += Math.hypot(camera[4 * frame] ?? 0, camera[4 * frame + 1] ?? 0);
  }
  return (swing * 80) / Math.max(width, height);
}
