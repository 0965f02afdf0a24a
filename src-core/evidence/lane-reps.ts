import { MARGIN_CYCLES, type SampledRun, STEPS_PER_CYCLE } from '../signal/cycle-samples.ts';

/** A rep's place on a sampled run: steps from the run's first cycle on, fractions allowed. */
export interface RepSteps {
  readonly run: number;
  readonly from: number;
  readonly to: number;
}

/** How a rep counts as done by a lane. */
export interface LaneRepRule {
  /** Share of the lane's usual motion in a rep that is enough. */
  readonly doneShare: number;
  /** How far a rep may lie from the lane's own beat, in cycles. */
  readonly searchCycles: number;
}

/** Set on rendered groups with missed reps; see the bench of unison. */
export const LANE_REP_RULE: LaneRepRule = { doneShare: 0.45, searchCycles: 0.2 };

/** Where a lane stands against the group, and how its reps count. */
interface LanePlace {
  /** Steps by which it is behind; negative is ahead. */
  readonly behindSteps: number;
  readonly rule: LaneRepRule;
}

/** Rounds of learning what a lane's cycle looks like from the reps it did. */
const ROUNDS = 3;
/** Of a lane's reps sorted by size, the one that stands for its usual size. */
const USUAL = 0.7;

/**
 * Which reps a lane did. A rep that it left out may lie half on one of the group's and half on the next, for where a
 * movement begins is often either of two turns: so the lane is also held against what lies from the middle of each rep
 * to the middle of the next, and whichever shows more left out counts.
 */
export function findDone(
  runs: readonly SampledRun[],
  weights: Float64Array,
  reps: readonly RepSteps[],
  place: LanePlace,
): boolean[] {
  const lane = gatherLane(runs, weights);
  const straddling = reps.flatMap((rep, at) => {
    const next = reps[at + 1];
    if (next?.run !== rep.run || next.from !== rep.to) return [];
    return [{ at, run: rep.run, from: (rep.from + rep.to) / 2, to: (next.from + next.to) / 2 }];
  });
  const findMissed = (stretches: readonly (RepSteps & { readonly at: number })[]) => {
    const sizes = sizeReps(lane, stretches, place);
    return stretches.flatMap(({ at }, index) => ((sizes[index] ?? 0) < place.rule.doneShare ? [at] : []));
  };
  const own = findMissed(reps.map((rep, at) => ({ ...rep, at })));
  const between = findMissed(straddling);
  const missed = new Set(between.length > own.length ? between : own);
  return reps.map((_, at) => !missed.has(at));
}

/**
 * How fully a lane did each rep: 1 its usual motion, 0 none, negative the reverse. Each rep's flow, cell by cell, is
 * held against the lane's mean cycle, `behindSteps` later than the group's; what else moves there does not match.
 */
export function measureReps(
  runs: readonly SampledRun[],
  weights: Float64Array,
  reps: readonly RepSteps[],
  place: LanePlace,
): number[] {
  return sizeReps(gatherLane(runs, weights), reps, place);
}

function sizeReps(lane: LaneCells, reps: readonly RepSteps[], place: LanePlace): number[] {
  const reach = Math.round(place.rule.searchCycles * STEPS_PER_CYCLE);
  let sizes = reps.map(() => 1);
  for (let round = 0; round < ROUNDS; round++) {
    const cycle = averageCycle(lane, reps, sizes, place.behindSteps);
    const matches = reps.map((rep) => {
      let best = -Infinity;
      for (let shift = -reach; shift <= reach; shift++) {
        best = Math.max(best, matchRep(lane, cycle, rep, place.behindSteps + shift));
      }
      return best;
    });
    const usual =
      [...matches].sort((one, other) => one - other)[Math.floor(USUAL * (matches.length - 1))] ?? 0;
    sizes = matches.map((match) => (usual > 0 ? match / usual : 0));
  }
  return sizes;
}

/** A lane's cells alone: per run, steps × cells × 2 numbers. */
interface LaneCells {
  readonly size: number;
  readonly runs: readonly Float64Array[];
}

function gatherLane(runs: readonly SampledRun[], weights: Float64Array): LaneCells {
  const cells = weights.length / STEPS_PER_CYCLE;
  const used = new Set([...weights.keys()].filter((at) => (weights[at] ?? 0) > 0).map((at) => at % cells));
  const kept = [...used];
  const size = 2 * kept.length;
  return {
    size,
    runs: runs.map((run) => {
      const steps = run.edgesSeconds.length - 1;
      const values = new Float64Array(steps * size);
      for (let step = 0; step < steps; step++) {
        for (const [at, cell] of kept.entries()) {
          const from = step * cells + cell;
          const weight = weights[(step % STEPS_PER_CYCLE) * cells + cell] ?? 0;
          values[step * size + 2 * at] = weight * (run.u[from] ?? 0);
          values[step * size + 2 * at + 1] = weight * (run.v[from] ?? 0);
        }
      }
      return values;
    }),
  };
}

/** The mean cycle of a lane, from the reps that it did. */
function averageCycle(
  lane: LaneCells,
  reps: readonly RepSteps[],
  sizes: readonly number[],
  behind: number,
): Float64Array {
  const cycle = new Float64Array(STEPS_PER_CYCLE * lane.size);
  const counts = new Float64Array(STEPS_PER_CYCLE);
  for (const [index, rep] of reps.entries()) {
    if ((sizes[index] ?? 0) < 0.5) continue;
    eachStep(lane, rep, behind, (from, to, values) => {
      counts[to] = (counts[to] ?? 0) + 1;
      for (let at = 0; at < lane.size; at++) {
        const into = to * lane.size + at;
        cycle[into] = (cycle[into] ?? 0) + (values[from * lane.size + at] ?? 0);
      }
    });
  }
  return cycle.map((sum, at) => sum / Math.max(1, counts[Math.floor(at / lane.size)] ?? 1));
}

/** How much of the mean cycle a rep holds: 1 as much as the mean. */
function matchRep(lane: LaneCells, cycle: Float64Array, rep: RepSteps, behind: number): number {
  let product = 0;
  let square = 0;
  eachStep(lane, rep, behind, (from, to, values) => {
    for (let at = 0; at < lane.size; at++) {
      const usual = cycle[to * lane.size + at] ?? 0;
      product += usual * (values[from * lane.size + at] ?? 0);
      square += usual * usual;
    }
  });
  return square > 0 ? product / square : 0;
}

/** Goes over the steps of a rep: where each lies in the run, later by `behind`, and where in the lane's own cycle. */
function eachStep(
  lane: LaneCells,
  rep: RepSteps,
  behind: number,
  visit: (from: number, to: number, values: Float64Array) => void,
): void {
  const values = lane.runs[rep.run];
  if (values === undefined) return;
  const steps = values.length / Math.max(1, lane.size);
  for (let step = Math.round(rep.from); step < Math.round(rep.to); step++) {
    const from = step + MARGIN_CYCLES * STEPS_PER_CYCLE + Math.round(behind);
    const to = ((step % STEPS_PER_CYCLE) + STEPS_PER_CYCLE) % STEPS_PER_CYCLE;
    if (from >= 0 && from < steps) visit(from, to, values);
  }
}
