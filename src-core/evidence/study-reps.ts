import type { Seconds } from '../platform/units.ts';
import type { CycleAgreement } from '../signal/cycle-agreement.ts';
import { measureCycleAgreement } from '../signal/cycle-agreement.ts';
import { measureTravel } from '../signal/cycle-travel.ts';
import { buildFlowBand } from '../signal/flow-band.ts';
import type { FlowVectors } from '../signal/flow-vectors.ts';
import { buildFlowVectors } from '../signal/flow-vectors.ts';
import { findLagPath } from '../signal/lag-path.ts';
import type { LagScores } from '../signal/lag-scores.ts';
import { LAGS_PER_OCTAVE, scoreLags } from '../signal/lag-scores.ts';
import { findMainDirection, projectFrames } from '../signal/main-direction.ts';
import type { MotionSeries } from '../signal/motion-series.ts';
import { buildPhaseTemplate } from '../signal/phase-template.ts';
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
  /** How well its cycles agree; see {@link RepsRule.leastTrust}. */
  readonly trust: number;
  /** How firmly the evidence stands: 1 just enough, below 1 not enough to speak of reps. */
  readonly standing: number;
  /** The movement as one line, a value a frame of the track, -1 to 1, upwards positive. */
  readonly signal: Float32Array;
}

/** What is looked at, and by which numbers. */
interface View {
  readonly motion: MotionSeries;
  readonly cells: FlowVectors;
  readonly options: RepsOptions;
  readonly rule: RepsRule;
}

type Candidate = Omit<RepsStudy, 'signal'>;

/** How many movements are looked at in turn. */
const TRIES = 3;

/**
 * Looks for the movement that repeats most; where it does not stand firmly (a sway of the camera, a pulse of the encoder),
 * for the next of another length. Gives the first that stands firmly, else the firmest; null where nothing repeats at all.
 */
export function studyReps(motion: MotionSeries, options: RepsOptions, rule: RepsRule): RepsStudy | null {
  const cells = buildFlowVectors(motion);
  const view = { motion, cells, options, rule };
  const scores = scoreLags(cells, options.cycleSeconds ?? ANY_CYCLE, rule.score);
  let best: Candidate | null = null;
  for (let attempt = 0; attempt < TRIES; attempt++) {
    const { lagAt, evidence } = findLagPath(scores, rule.path);
    if (evidence <= 0) break;
    const candidate = weighLags(view, scores, lagAt);
    if (!best || candidate.standing > best.standing) best = candidate;
    if (best.standing >= rule.firmStanding) break;
    silenceLags(scores, lagAt);
  }
  return best && { ...best, signal: drawMovement(cells, best.track) };
}

/** Follows the lags of a path, or their doubles where frames agree with those two lags later alone. */
function weighLags(view: View, scores: LagScores, lagAt: Int32Array): Candidate {
  const { options, rule } = view;
  const track = followLags(view, scores, lagAt);
  const { all, best } = compareCycles(view, track);
  const returns = findReturn(best, options, rule) >= rule.returnShare * best.twice;
  const canDouble = lagAt.every((index) => index + LAGS_PER_OCTAVE < scores.lags.length);
  if (returns || !canDouble) return weigh(view, track, findReturn(all, options, rule));
  const twice = followLags(
    view,
    scores,
    lagAt.map((index) => index + LAGS_PER_OCTAVE),
  );
  return weigh(view, twice, findReturn(compareCycles(view, twice).all, options, rule));
}

function followLags({ cells, rule }: View, { lags, scores }: LagScores, lagAt: Int32Array): CycleTrack {
  const scoreAt = Float32Array.from(
    lagAt,
    (index, frame) => scores[frame * lags.length + index] ?? Number.NaN,
  );
  return trackCycles(
    cells,
    Float64Array.from(lagAt, (index) => lags[index] ?? Number.NaN),
    scoreAt,
    rule,
  );
}

function compareCycles({ motion, cells }: View, { shortest, path }: CycleTrack) {
  return measureCycleAgreement(buildFlowBand(cells, shortest), motion.columns, path.phases);
}

/** How well frames agree with those one cycle later, the other side's turn included. */
function findReturn({ once, mirrored }: CycleAgreement, { counting }: RepsOptions, rule: RepsRule): number {
  // What turns back in place is on its way home, not the other side's turn.
  return counting === 'side' ? once : Math.max(once, mirrored + rule.turnedShare * Math.min(0, once));
}

function weigh({ motion, options, rule }: View, track: CycleTrack, agreement: number): Candidate {
  const runs = listCycleRuns(track, rule);
  const cycles = runs.reduce((sum, run) => sum + run.cycles, 0);
  const score = runs.reduce((sum, run) => sum + run.cycles * run.score, 0) / Math.max(1e-9, cycles);
  const trust = Math.sqrt(Math.max(0, score) * Math.max(0, agreement) * cycles);
  const cycleSeconds = sumSeconds(track, runs) / Math.max(1e-9, cycles);
  const isFew = cycles < rule.leastCycles;
  const reach = measureReach(motion, track, runs, rule);
  const standing = isFew ? 0 : Math.min(trust / findLeastTrust(cycleSeconds, options, rule), reach);
  return { track, runs, cycles, trust, standing };
}

/** What is enough of it, at a pace and among as many lengths as were looked through. */
function findLeastTrust(cycleSeconds: Seconds, options: RepsOptions, rule: RepsRule): number {
  const [shortest, longest] = options.cycleSeconds ?? ANY_CYCLE;
  return Math.min(
    rule.leastTrust * Math.max(1, cycleSeconds) ** rule.slowTrust,
    rule.leastTrustPerOctave * Math.max(1, Math.log2(longest / shortest)),
  );
}

function sumSeconds({ frameSeconds }: CycleTrack, runs: readonly CycleRun[]): Seconds {
  return runs.reduce((sum, { first, last }) => sum + (last - first + 1) * frameSeconds, 0);
}

/** The movement of the cells along its main direction. */
function drawMovement(cells: FlowVectors, { shortest, path, match }: CycleTrack): Float32Array {
  const band = buildFlowBand(cells, shortest);
  return projectFrames(band, findMainDirection(buildPhaseTemplate(band, path.phases, match.bins)));
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
  track: CycleTrack,
  runs: readonly CycleRun[],
  rule: RepsRule,
): number {
  const { path, stride } = track;
  const travel = measureTravel(motion, (frame) => path.phases[Math.floor(frame / stride)] ?? Number.NaN);
  const cycles = Math.max(
    1e-9,
    runs.reduce((sum, run) => sum + run.cycles, 0),
  );
  let swing = 0;
  for (const { first, last } of runs) swing += measureSwing(motion, first * stride, last * stride);
  const least = Math.max(
    rule.leastTravel,
    (rule.leastSpeed * sumSeconds(track, runs)) / cycles,
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
