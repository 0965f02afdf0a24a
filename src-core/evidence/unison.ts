import type { Seconds } from '../platform/units.ts';
import { MARGIN_CYCLES, type SampledRun, STEPS_PER_CYCLE, sampleRun } from '../signal/cycle-samples.ts';
import type { MotionSeries } from '../signal/motion-series.ts';
import { findLagSeconds } from '../signal/phase.ts';
import { isAlternating } from './alternation.ts';
import { type LanePhase, measurePhases } from './lane-phases.ts';
import { findDone, LANE_REP_RULE, type RepSteps } from './lane-reps.ts';
import { type ReadLane, readLanes } from './read-lanes.ts';
import type { RepsFinding } from './reps-finding.ts';
import type { GivenLanes, UnisonFinding, UnisonLane, UnisonOptions } from './unison-finding.ts';
import { averageScore, listWindows, traceAgreement } from './unison-score.ts';

/** Share of the reps it does for which a lane's lag must lie within reach. */
const TOGETHER_SHARE = 0.8;
/** Reps that a lane may miss and still be together with the group. */
const MAY_MISS = 1;
/**
 * Whatever the tolerance, nobody further from the group than this share of the cycle is together with it. Lags wrap round
 * the cycle, and of two performers neither is ever more than a quarter of it from their middle: a tolerance longer than that
 * would pass any pair. Two that are each a sixth away stand to each other like neighbours in a round of three.
 */
const TOGETHER_CYCLES = 1 / 6;
/** Steadiness below which lanes at even distances in the cycle are there by accident; set as those of `alternation.ts` were. */
const STEADY = 0.7;

/**
 * Measures how far the performers of a clip move together. Null where that cannot be known: nothing periodic (no run
 * of two cycles), or fewer than two lanes.
 */
export function measureUnison(
  motion: MotionSeries,
  reps: RepsFinding,
  options: UnisonOptions,
): UnisonFinding | null {
  const kept = reps.runs.filter(({ boundariesSeconds }) => boundariesSeconds.length > 2);
  const flow = { ...motion, ...motion.fine };
  const runs = kept.map(({ boundariesSeconds }) => sampleRun(flow, boundariesSeconds));
  const given = options.lanes ?? null;
  const lanes = readLanes(flow, runs, given);
  if (lanes.length < 2) return null;
  const repSteps = placeReps(reps.timesSeconds, runs);
  const phases = measurePhases(lanes.map(({ flows }) => flows));
  const cycles = runs.flatMap(listCycleSeconds);
  const cycleSeconds = findMedian(cycles);
  const reachSeconds = Math.min(options.toleranceSeconds, TOGETHER_CYCLES * cycleSeconds);
  const clip: Clip = { width: motion.width, runs, repSteps, cycles, cycleSeconds, reachSeconds };
  const found = lanes.map((lane, index) => describeLane(lane, phases[index], clip));
  const moments = traceAgreement(phases, runs.flatMap(listMiddles));
  const isSteady = phases.every(({ steadiness }) => steadiness >= STEADY);
  const alternating = isSteady && isAlternating(phases.map(({ phase }) => phase));
  return {
    score: averageScore(moments),
    lanes: found,
    missingLanes: countMissing(given, found.length),
    repCount: repSteps.length,
    windows: listWindows(moments, cycleSeconds),
    alternating,
    reachSeconds,
    together: !alternating && found.every(({ fault }) => fault === null),
  };
}

function countMissing(given: GivenLanes | null, found: number): number {
  if (given === null) return 0;
  return Math.max(0, (typeof given === 'number' ? given : given.length) - found);
}

/** Where each rep lies on its run, from the instants at which reps end. */
function placeReps(ends: readonly Seconds[], runs: readonly SampledRun[]): RepSteps[] {
  return runs.flatMap((run, index) => {
    const margin = MARGIN_CYCLES * STEPS_PER_CYCLE;
    const last = margin + run.cycles * STEPS_PER_CYCLE;
    const first = run.edgesSeconds[margin] ?? 0;
    const until = run.edgesSeconds[last] ?? 0;
    // A rep ends within a run: half a step of leeway for rounding.
    const leeway = (until - first) / (2 * run.cycles * STEPS_PER_CYCLE);
    let from = 0;
    return ends
      .filter((end) => end > first + leeway && end <= until + leeway)
      .map((end) => {
        const to = findStep(run, end) - margin;
        const rep: RepSteps = { run: index, from, to };
        from = to;
        return rep;
      });
  });
}

function findStep({ edgesSeconds }: SampledRun, at: Seconds): number {
  const next = edgesSeconds.findIndex((edge) => edge >= at);
  if (next < 0) return edgesSeconds.length - 1;
  const from = edgesSeconds[next - 1] ?? at;
  const to = edgesSeconds[next] ?? at;
  return to > from ? next - (to - at) / (to - from) : next;
}

function listCycleSeconds({ cycles, edgesSeconds }: SampledRun): Seconds[] {
  return Array.from({ length: cycles }, (_, cycle) => {
    const from = (cycle + MARGIN_CYCLES) * STEPS_PER_CYCLE;
    return (edgesSeconds[from + STEPS_PER_CYCLE] ?? 0) - (edgesSeconds[from] ?? 0);
  });
}

function listMiddles({ cycles, edgesSeconds }: SampledRun): Seconds[] {
  return Array.from(
    { length: cycles },
    (_, cycle) => edgesSeconds[(cycle + MARGIN_CYCLES + 0.5) * STEPS_PER_CYCLE] ?? 0,
  );
}

function findMedian(values: readonly number[]): number {
  return [...values].sort((one, other) => one - other)[values.length >> 1] ?? 0;
}

/** What all lanes of a clip are held against. */
interface Clip {
  readonly width: number;
  readonly runs: readonly SampledRun[];
  readonly repSteps: readonly RepSteps[];
  /** Length of each cycle, run after run, in seconds. */
  readonly cycles: readonly Seconds[];
  /** Their median. */
  readonly cycleSeconds: Seconds;
  readonly reachSeconds: Seconds;
}

function describeLane(read: ReadLane, phase: LanePhase | undefined, clip: Clip): UnisonLane {
  const { middle: column, weights } = read;
  const { width, runs, repSteps, cycles, cycleSeconds } = clip;
  const place = phase?.phase ?? 0;
  const behindSteps = findLagSeconds(place, STEPS_PER_CYCLE);
  const done = findDone(runs, weights, repSteps, { behindSteps, rule: LANE_REP_RULE });
  const firstCycles = runs.map((_, run) => runs.slice(0, run).reduce((sum, other) => sum + other.cycles, 0));
  const repLagsSeconds = repSteps.map((rep, index) => {
    if (!done[index]) return null;
    const middle = (rep.from + rep.to) / 2 / STEPS_PER_CYCLE;
    const cycle = (firstCycles[rep.run] ?? 0) + Math.floor(middle);
    return findLagSeconds(phase?.cyclePhases[cycle] ?? place, cycles[cycle] ?? 0);
  });
  return {
    x: column / width,
    lagSeconds: findLagSeconds(place, cycleSeconds),
    repLagsSeconds,
    reps: repLagsSeconds.filter((lag) => lag !== null).length,
    fault: findFault(repLagsSeconds, clip.reachSeconds),
    steadiness: phase?.steadiness ?? 0,
  };
}

function findFault(repLags: readonly (Seconds | null)[], reachSeconds: Seconds): UnisonLane['fault'] {
  const done = repLags.filter((lag) => lag !== null);
  if (repLags.length - done.length > MAY_MISS) return 'misses-reps';
  const near = done.filter((lag) => Math.abs(lag) <= reachSeconds).length;
  return near < TOGETHER_SHARE * done.length ? 'off-beat' : null;
}
