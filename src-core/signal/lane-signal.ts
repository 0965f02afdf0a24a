import { MARGIN_CYCLES, type SampledRun, STEPS_PER_CYCLE } from './cycle-samples.ts';
import type { HomeMap } from './home-map.ts';
import type { Lane } from './lanes.ts';

/** Share of a lane's most returning cell below which a cell adds more noise than motion. */
const QUIET_SHARE = 0.04;

/** Displacement of a lane during each step of a run, in pixels of the small frame, summed over its cells. */
export interface LaneFlow {
  readonly u: Float64Array;
  readonly v: Float64Array;
}

/**
 * How far each cell belongs to a lane at each step of the cycle: by the place that its motion has its home at, for
 * whoever moves sideways comes into the neighbours' cells. A step's cells, then the next step's; 0 where nothing returns.
 */
export function weighCells(
  lane: Lane,
  runs: readonly SampledRun[],
  map: HomeMap,
  cells: number,
): Float64Array {
  const returning = new Float64Array(cells);
  for (const run of runs) addReturningEnergy(run, returning);
  const isOwn = (home: number) => home >= lane.from && home < lane.to;
  const most = returning.reduce((best, energy, cell) => {
    const isHere = Array.from(
      { length: STEPS_PER_CYCLE },
      (_, step) => map.homes[step * cells + cell] ?? -1,
    ).some(isOwn);
    return isHere ? Math.max(best, energy) : best;
  }, 0);
  return Float64Array.from(map.homes, (home, at) =>
    isOwn(home) && (returning[at % cells] ?? 0) > QUIET_SHARE * most ? 1 : 0,
  );
}

/**
 * Adds up each cell's flow times its flow a cycle later. What does not come back every cycle (noise, a person walking
 * through) adds up to nothing.
 */
function addReturningEnergy({ u, v }: SampledRun, to: Float64Array): void {
  const on = STEPS_PER_CYCLE * to.length;
  for (let at = 0; at + on < u.length; at++) {
    const cell = at % to.length;
    to[cell] = (to[cell] ?? 0) + (u[at] ?? 0) * (u[at + on] ?? 0) + (v[at] ?? 0) * (v[at + on] ?? 0);
  }
}

/** Sums a run's flow over the cells of a lane, step by step. */
export function sumLane(run: SampledRun, weights: Float64Array): LaneFlow {
  const cells = weights.length / STEPS_PER_CYCLE;
  const steps = run.edgesSeconds.length - 1;
  const u = new Float64Array(steps);
  const v = new Float64Array(steps);
  for (let step = 0; step < steps; step++) {
    for (let cell = 0; cell < cells; cell++) {
      const weight = weights[(step % STEPS_PER_CYCLE) * cells + cell] ?? 0;
      u[step] = (u[step] ?? 0) + weight * (run.u[step * cells + cell] ?? 0);
      v[step] = (v[step] ?? 0) + weight * (run.v[step * cells + cell] ?? 0);
    }
  }
  return { u, v };
}

/** Flow times flow one cycle on, the mean a step over all runs: energy at the rep rate; 0 where nothing returns. */
export function measureReturning(flows: readonly LaneFlow[]): number {
  let sum = 0;
  let steps = 0;
  for (const { u, v } of flows) {
    const end = u.length - (MARGIN_CYCLES + 1) * STEPS_PER_CYCLE;
    for (let at = MARGIN_CYCLES * STEPS_PER_CYCLE; at < end; at++) {
      const on = at + STEPS_PER_CYCLE;
      sum += (u[at] ?? 0) * (u[on] ?? 0) + (v[at] ?? 0) * (v[on] ?? 0);
      steps++;
    }
  }
  return steps === 0 ? 0 : Math.max(0, sum / steps);
}

/** A lane's flow a number of times as large. */
export function scaleLane({ u, v }: LaneFlow, times: number): LaneFlow {
  return { u: u.map((value) => value * times), v: v.map((value) => value * times) };
}
