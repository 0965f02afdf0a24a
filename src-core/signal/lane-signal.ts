import { MARGIN_CYCLES, type SampledRun, STEPS_PER_CYCLE } from './cycle-samples.ts';
import type { HomeMap } from './home-map.ts';
import { averageReturning } from './returning-energy.ts';

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
 *
 * @param isOwn whether a pixel of the map is the lane's
 */
export function weighCells(isOwn: (pixel: number) => boolean, map: HomeMap, cells: number): Float64Array {
  const returning = new Float64Array(cells);
  for (const [at, energy] of map.energies.entries()) {
    returning[at % cells] = (returning[at % cells] ?? 0) + energy;
  }
  const most = map.homes.reduce(
    (best, home, at) => (isOwn(home) ? Math.max(best, returning[at % cells] ?? 0) : best),
    0,
  );
  return Float64Array.from(map.homes, (home, at) =>
    isOwn(home) && (returning[at % cells] ?? 0) > QUIET_SHARE * most ? 1 : 0,
  );
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

/** Energy of a lane that returns, the mean a step over all runs; 0 where nothing does. */
export function measureReturning(flows: readonly LaneFlow[]): number {
  const runs = flows.map((flow) => ({
    ...flow,
    cycles: flow.u.length / STEPS_PER_CYCLE - 2 * MARGIN_CYCLES,
  }));
  const sum = averageReturning(runs, 1).reduce((all, energy) => all + energy, 0);
  return Math.max(0, sum / STEPS_PER_CYCLE);
}

/** A lane's flow a number of times as large. */
export function scaleLane({ u, v }: LaneFlow, times: number): LaneFlow {
  return { u: u.map((value) => value * times), v: v.map((value) => value * times) };
}
