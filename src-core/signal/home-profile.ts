import { type SampledRun, STEPS_PER_CYCLE } from './cycle-samples.ts';

/** The grid that flow was read on; part of a motion series. */
export interface CellGrid {
  /** Of the small frame, in pixels. */
  readonly width: number;
  readonly height: number;
  readonly columns: number;
  readonly rows: number;
}

/** Standard deviation of the smoothing, in shares of the frame's long side: about a third of a performer's width. */
const SMOOTH_SHARE = 1 / 32;

/** Products of a run's flow with itself one cycle on, one value a step and cell; only what comes back counts. */
export type ReturningEnergy = Float32Array;

/**
 * Energy at the rep rate: each cell's flow times its flow a cycle later. What does not come back every cycle (noise,
 * a person walking through) averages to nothing. One value a step and cell; the last cycle holds zeros.
 */
export function readReturningEnergy({ u, v }: SampledRun, cells: number): ReturningEnergy {
  const energy = new Float32Array(u.length);
  const on = STEPS_PER_CYCLE * cells;
  for (let at = 0; at + on < u.length; at++) {
    energy[at] = (u[at] ?? 0) * (u[at + on] ?? 0) + (v[at] ?? 0) * (v[at + on] ?? 0);
  }
  return energy;
}

/**
 * How much returning motion has its home at each pixel column of the small frame, from left to right.
 *
 * Performers who move sideways sweep over each other's places, so energy is not put down where it is seen but at the
 * middle of the path that a point drawn along by the flow takes through the next cycle. Smoothed; never negative.
 */
export function readHomeProfile(runs: readonly SampledRun[], grid: CellGrid): Float64Array {
  const profile = new Float64Array(Math.round(grid.width));
  for (const run of runs) addRun(run, grid, profile);
  return smooth(profile, SMOOTH_SHARE * Math.max(grid.width, grid.height));
}

function addRun(run: SampledRun, grid: CellGrid, profile: Float64Array): void {
  const cells = grid.columns * grid.rows;
  const energy = readReturningEnergy(run, cells);
  const carried = carryFlow(run, grid);
  const last = profile.length - 1;
  for (let at = 0; at + STEPS_PER_CYCLE * cells < energy.length; at++) {
    const share = energy[at] ?? 0;
    if (share === 0) continue;
    const home = Math.min(last, Math.max(0, findHome(carried, grid, at)));
    const left = Math.floor(home);
    profile[left] = (profile[left] ?? 0) + share * (left + 1 - home);
    if (left < last) profile[left + 1] = (profile[left + 1] ?? 0) + share * (home - left);
  }
}

/**
 * The flow that carries a point: each cell's neighbourhood averaged by energy, because a cell that a performer fills
 * in part shows a part of the performer's speed only.
 */
function carryFlow(run: SampledRun, grid: CellGrid): { u: Float32Array; v: Float32Array } {
  const { columns, rows } = grid;
  const cells = columns * rows;
  const u = new Float32Array(run.u.length);
  const v = new Float32Array(run.v.length);
  for (let first = 0; first < u.length; first += cells) {
    for (let cell = 0; cell < cells; cell++) {
      const column = cell % columns;
      const row = (cell - column) / columns;
      let weight = 1e-6;
      let sumU = 0;
      let sumV = 0;
      for (let y = Math.max(0, row - 1); y <= Math.min(rows - 1, row + 1); y++) {
        for (let x = Math.max(0, column - 1); x <= Math.min(columns - 1, column + 1); x++) {
          const at = first + y * columns + x;
          const right = run.u[at] ?? 0;
          const down = run.v[at] ?? 0;
          const energy = right * right + down * down;
          weight += energy;
          sumU += energy * right;
          sumV += energy * down;
        }
      }
      u[first + cell] = sumU / weight;
      v[first + cell] = sumV / weight;
    }
  }
  return { u, v };
}

/** Middle, in pixels from the left, of the path that starts at a step and cell and lasts one cycle. */
function findHome(flow: { u: Float32Array; v: Float32Array }, grid: CellGrid, start: number): number {
  const { columns, rows } = grid;
  const cells = columns * rows;
  const cell = start % cells;
  const across = columns / grid.width;
  const down = rows / grid.height;
  let x = cell % columns;
  let y = Math.floor(cell / columns);
  let sum = 0;
  let first = start - cell;
  for (let step = 0; step < STEPS_PER_CYCLE; step++) {
    sum += x;
    const column = Math.min(columns - 1, Math.max(0, Math.round(x)));
    const row = Math.min(rows - 1, Math.max(0, Math.round(y)));
    const at = first + row * columns + column;
    x += (flow.u[at] ?? 0) * across;
    y += (flow.v[at] ?? 0) * down;
    first += cells;
  }
  return (sum / STEPS_PER_CYCLE + 0.5) / across - 0.5;
}

function smooth(profile: Float64Array, deviation: number): Float64Array {
  const reach = Math.ceil(3 * deviation);
  return Float64Array.from(profile, (_, middle) => {
    let sum = 0;
    let total = 0;
    for (let at = Math.max(0, middle - reach); at <= Math.min(profile.length - 1, middle + reach); at++) {
      const weight = Math.exp(-((at - middle) ** 2) / (2 * deviation ** 2));
      sum += weight * (profile[at] ?? 0);
      total += weight;
    }
    return Math.max(0, sum / total);
  });
}
