import { MARGIN_CYCLES, STEPS_PER_CYCLE } from './cycle-samples.ts';
import { followLag, type LaneLag, type Stretch } from './lane-lag.ts';
import type { LaneFlow } from './lane-signal.ts';
import { measureAgreement } from './order-parameter.ts';

/** Rounds in which the group's cycle and the lanes' lags are found from each other. */
const ROUNDS = 4;
/** Cycles before and after a cycle that are read with it: what the noise of one hides, three show. */
const NEIGHBOURS = 1;

const TURN = (2 * Math.PI) / STEPS_PER_CYCLE;

/**
 * Lags of all lanes in each cycle of each run, lane by lane: `flows[lane][run]` of like size becomes `lags[lane][run][cycle]`.
 * What they are held against is a cycle learnt from all lanes, each moved to where it fits; 0 is the group's middle, near
 * enough. A cycle is read with its neighbours in the run, so a lag is that of about three cycles.
 */
export function alignLanes(lanes: readonly (readonly LaneFlow[])[]): LaneLag[][][] {
  const stretches = (lanes[0] ?? []).map(listStretches);
  const follow = (cycle: LaneFlow) =>
    lanes.map((flows) => flows.map((flow, run) => followLag(flow, cycle, stretches[run] ?? [])));
  let lags = follow(findSteadiest(lanes.map((flows) => sumCycles(flows, stretches, () => 0))));
  for (let round = 1; round < ROUNDS; round++) {
    const middle = findMiddle(lags.flat(2));
    const cycle = createCycle();
    for (const [lane, flows] of lanes.entries()) {
      const getLag = (run: number, at: number) => wrapSteps((lags[lane]?.[run]?.[at]?.steps ?? 0) - middle);
      addCycle(cycle, sumCycles(flows, stretches, getLag));
    }
    lags = follow(cycle);
  }
  return lags;
}

/** Each cycle of a run with its neighbours inside the run. */
function listStretches({ u }: LaneFlow): Stretch[] {
  const cycles = u.length / STEPS_PER_CYCLE - 2 * MARGIN_CYCLES;
  const findStart = (cycle: number) => (cycle + MARGIN_CYCLES) * STEPS_PER_CYCLE;
  return Array.from({ length: cycles }, (_, cycle) => ({
    from: findStart(Math.max(0, cycle - NEIGHBOURS)),
    to: findStart(Math.min(cycles, cycle + NEIGHBOURS + 1)),
  }));
}

function createCycle(): LaneFlow {
  return { u: new Float64Array(STEPS_PER_CYCLE), v: new Float64Array(STEPS_PER_CYCLE) };
}

/** Sums the stretches of a lane to one cycle, each read later by its lag. */
function sumCycles(
  flows: readonly LaneFlow[],
  stretches: readonly (readonly Stretch[])[],
  getLag: (run: number, at: number) => number,
): LaneFlow {
  const cycle = createCycle();
  for (const [run, { u, v }] of flows.entries()) {
    for (const [at, { from, to }] of (stretches[run] ?? []).entries()) {
      const behind = Math.round(getLag(run, at));
      for (let step = from; step < to; step++) {
        const turn = step % STEPS_PER_CYCLE;
        cycle.u[turn] = (cycle.u[turn] ?? 0) + (u[step + behind] ?? 0);
        cycle.v[turn] = (cycle.v[turn] ?? 0) + (v[step + behind] ?? 0);
      }
    }
  }
  return cycle;
}

function addCycle(to: LaneFlow, { u, v }: LaneFlow): void {
  for (let step = 0; step < STEPS_PER_CYCLE; step++) {
    to.u[step] = (to.u[step] ?? 0) + (u[step] ?? 0);
    to.v[step] = (to.v[step] ?? 0) + (v[step] ?? 0);
  }
}

/** The strongest of some mean cycles: of lanes of like strength, the one that repeats itself best at the group's tempo. */
function findSteadiest(cycles: readonly LaneFlow[]): LaneFlow {
  const measure = ({ u, v }: LaneFlow) => Math.hypot(...u, ...v);
  return cycles.reduce((best, cycle) => (measure(cycle) > measure(best) ? cycle : best), createCycle());
}

/** Circular mean of lags, in steps; who stands still has no say. */
function findMiddle(lags: readonly LaneLag[]): number {
  const weights = lags.map(({ match }) => Math.max(0, match));
  return (
    measureAgreement(
      lags.map(({ steps }) => steps * TURN),
      weights,
    ).phase / TURN
  );
}

function wrapSteps(steps: number): number {
  return steps - STEPS_PER_CYCLE * Math.round(steps / STEPS_PER_CYCLE);
}
