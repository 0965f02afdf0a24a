import { MARGIN_CYCLES, type SampledRun, STEPS_PER_CYCLE } from './cycle-samples.ts';
import type { HomeMap } from './home-map.ts';
import type { Lane } from './lanes.ts';

/** Share of a lane's most returning cell below which a cell adds more noise than motion. */
const QUIET_SHARE = 0.04;

/** Below this upward part a main direction counts as sideways, and right is taken for its positive end. */
const SIDEWAYS = 0.3;

/** A direction in the picture: parts to the right and downwards, of length 1. */
export type Direction = readonly [right: number, down: number];

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

/** Second moments of flow with itself one cycle on: xx, xy, yy; what does not return averages out. */
export type Moments = readonly [xx: number, xy: number, yy: number];

/** Moments of a lane over all runs, brought to a trace of 1 so that no lane outweighs another; null where nothing returns. */
export function measureMoments(flows: readonly LaneFlow[]): Moments | null {
  let xx = 0;
  let xy = 0;
  let yy = 0;
  for (const { u, v } of flows) {
    const end = u.length - (MARGIN_CYCLES + 1) * STEPS_PER_CYCLE;
    for (let at = MARGIN_CYCLES * STEPS_PER_CYCLE; at < end; at++) {
      const on = at + STEPS_PER_CYCLE;
      xx += (u[at] ?? 0) * (u[on] ?? 0);
      yy += (v[at] ?? 0) * (v[on] ?? 0);
      xy += ((u[at] ?? 0) * (v[on] ?? 0) + (v[at] ?? 0) * (u[on] ?? 0)) / 2;
    }
  }
  const trace = xx + yy;
  return trace > 0 ? [xx / trace, xy / trace, yy / trace] : null;
}

/** The axis along which moments are largest; its end is the upward one, or the right one where it lies sideways. */
export function findMainDirection([xx, xy, yy]: Moments): Direction {
  const angle = Math.atan2(2 * xy, xx - yy) / 2;
  const right = Math.cos(angle);
  const down = Math.sin(angle);
  const turned = Math.abs(down) >= SIDEWAYS ? down > 0 : right < 0;
  return turned ? [-right, -down] : [right, down];
}

/**
 * A lane's own main direction with the end that agrees with the group's, so that one who moves a little aslant is not
 * taken for one who moves against the others. Where the two lie across each other, vertical motion decides.
 */
export function orientDirection(own: Direction, group: Direction): Direction {
  const along = own[0] * group[0] + own[1] * group[1];
  if (Math.abs(along) < Math.SQRT1_2 || along > 0) return own;
  return [-own[0], -own[1]];
}

/** One signed line: a lane's flow along a direction. */
export function projectLane({ u, v }: LaneFlow, [right, down]: Direction): Float64Array {
  return u.map((value, at) => value * right + (v[at] ?? 0) * down);
}
