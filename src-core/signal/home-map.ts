import { MARGIN_CYCLES, type SampledRun, STEPS_PER_CYCLE } from './cycle-samples.ts';
import { averageReturning } from './returning-energy.ts';

/** The grid that flow was read on; part of a motion series. */
export interface CellGrid {
  /** Of the small frame, in pixels. */
  readonly width: number;
  readonly height: number;
  readonly columns: number;
  readonly rows: number;
}

/** How much periodic motion has its home at each pixel of the small frame, row by row; never negative. */
export interface HomeMap {
  readonly width: number;
  readonly height: number;
  readonly amounts: Float64Array;
  /** Pixel that what moves in a cell at a step of the mean cycle has its home at; a step's cells, then the next step's. */
  readonly homes: Int32Array;
  /** Energy that returns there, in the same order; see {@link averageReturning}. */
  readonly energies: Float64Array;
}

/**
 * Standard deviations of the smoothing across and down, in shares of the frame's width: people are tall, and a group is
 * filmed from as far as it takes to fill the width.
 */
const SMOOTH_SHARES = [1 / 40, 1 / 27] as const;

/** Motion is what exceeds the median of the noise so many times: about three and a half standard deviations. */
const NOISE_TIMES = 5;

/** The mean cycle of all runs: displacement a step and cell, in pixels of the small frame. */
interface MeanCycle {
  readonly u: Float64Array;
  readonly v: Float64Array;
}

/**
 * Where the performers of a clip belong, whatever they do around that place.
 *
 * Noise and whoever walks through do not come back. Performers who move sideways sweep over each other's
 * places, so motion is not put down where it is seen but at the middle of the path that a point drawn along by the flow
 * takes through the cycle. It counts by its speed, not by its energy, so that somebody far off is seen beside somebody
 * near.
 */
export function readHomeMap(runs: readonly SampledRun[], grid: CellGrid): HomeMap {
  const cycle = averageCycle(runs, grid.columns * grid.rows);
  const [width, height] = [Math.round(grid.width), Math.round(grid.height)];
  const amounts = new Float64Array(width * height);
  const energies = averageReturning(runs, grid.columns * grid.rows);
  const noise = NOISE_TIMES * findNoise(energies);
  const carried = carryFlow(cycle, grid);
  const findPixel = (x: number, y: number) => {
    const column = Math.min(width - 1, Math.max(0, Math.round(x)));
    return Math.min(height - 1, Math.max(0, Math.round(y))) * width + column;
  };
  // What hardly moves is at home where it is.
  const homes = Int32Array.from(energies, (_, at) => findPixel(...findMiddle(grid, at)));
  for (const [at, energy] of energies.entries()) {
    if (energy <= noise) continue;
    const home = findPixel(...findHome(carried, grid, at));
    homes[at] = home;
    amounts[home] = (amounts[home] ?? 0) + Math.sqrt(energy) - Math.sqrt(noise);
  }
  return { width, height, amounts: smooth(amounts, width, height), homes, energies };
}

/** The map seen from above: how much is at home in each pixel column, from left to right. */
export function sumColumns({ width, amounts }: HomeMap): Float64Array {
  const profile = new Float64Array(width);
  for (const [at, amount] of amounts.entries()) profile[at % width] = (profile[at % width] ?? 0) + amount;
  return profile;
}

function averageCycle(runs: readonly SampledRun[], cells: number): MeanCycle {
  const length = STEPS_PER_CYCLE * cells;
  const [u, v] = [new Float64Array(length), new Float64Array(length)];
  const cycles = runs.reduce((sum, run) => sum + run.cycles, 0);
  for (const run of runs) {
    const from = MARGIN_CYCLES * length;
    for (let at = 0; at < run.cycles * length; at++) {
      const to = at % length;
      u[to] = (u[to] ?? 0) + (run.u[from + at] ?? 0) / cycles;
      v[to] = (v[to] ?? 0) + (run.v[from + at] ?? 0) / cycles;
    }
  }
  return { u, v };
}

/** Median size of what is below 0, which nothing but noise is; 0 where there is none. */
function findNoise(energies: Float64Array): number {
  const below = energies.filter((energy) => energy < 0).sort();
  return -(below[below.length >> 1] ?? 0);
}

/**
 * The flow that carries a point: each cell's neighbourhood averaged by energy, because a cell that a performer fills
 * in part shows a part of the performer's speed only.
 */
function carryFlow(cycle: MeanCycle, { columns, rows }: CellGrid): MeanCycle {
  const cells = columns * rows;
  const [u, v] = [new Float64Array(cycle.u.length), new Float64Array(cycle.v.length)];
  for (let at = 0; at < u.length; at++) {
    const first = at - (at % cells);
    const column = at % columns;
    const row = Math.floor((at - first) / columns);
    let weight = 1e-6;
    let [sumU, sumV] = [0, 0];
    for (let y = Math.max(0, row - 1); y <= Math.min(rows - 1, row + 1); y++) {
      for (let x = Math.max(0, column - 1); x <= Math.min(columns - 1, column + 1); x++) {
        const right = cycle.u[first + y * columns + x] ?? 0;
        const down = cycle.v[first + y * columns + x] ?? 0;
        const energy = right * right + down * down;
        weight += energy;
        sumU += energy * right;
        sumV += energy * down;
      }
    }
    u[at] = sumU / weight;
    v[at] = sumV / weight;
  }
  return { u, v };
}

/** Middle of a cell, in pixels from the upper left one's middle. */
function findMiddle({ width, height, columns, rows }: CellGrid, at: number): readonly [x: number, y: number] {
  const row = Math.floor((at % (columns * rows)) / columns);
  return [(((at % columns) + 0.5) * width) / columns - 0.5, ((row + 0.5) * height) / rows - 0.5];
}

/** Middle, in pixels from the upper left one's middle, of the path that starts at a step and cell and lasts one cycle. */
function findHome({ u, v }: MeanCycle, grid: CellGrid, start: number): readonly [x: number, y: number] {
  const { columns, rows } = grid;
  const cells = columns * rows;
  const [across, down] = [columns / grid.width, rows / grid.height];
  let x = start % columns;
  let y = Math.floor((start % cells) / columns);
  let [sumX, sumY] = [0, 0];
  let first = start - (start % cells);
  for (let step = 0; step < STEPS_PER_CYCLE; step++) {
    sumX += x;
    sumY += y;
    const column = Math.min(columns - 1, Math.max(0, Math.round(x)));
    const row = Math.min(rows - 1, Math.max(0, Math.round(y)));
    const at = first + row * columns + column;
    x += (u[at] ?? 0) * across;
    y += (v[at] ?? 0) * down;
    first = (first + cells) % u.length;
  }
  return [(sumX / STEPS_PER_CYCLE + 0.5) / across - 0.5, (sumY / STEPS_PER_CYCLE + 0.5) / down - 0.5];
}

function smooth(amounts: Float64Array, width: number, height: number): Float64Array {
  const [across, down] = SMOOTH_SHARES;
  const rows = smoothAlong(amounts, across * width, { length: width, step: 1 });
  return smoothAlong(rows, down * width, { length: height, step: width });
}

function smoothAlong(
  amounts: Float64Array,
  deviation: number,
  { length, step }: { readonly length: number; readonly step: number },
): Float64Array {
  const reach = Math.ceil(3 * deviation);
  return amounts.map((_, at) => {
    const place = Math.floor(at / step) % length;
    let sum = 0;
    let total = 0;
    for (let by = -Math.min(reach, place); by <= Math.min(reach, length - 1 - place); by++) {
      const weight = Math.exp(-(by ** 2) / (2 * deviation ** 2));
      sum += weight * (amounts[at + by * step] ?? 0);
      total += weight;
    }
    return sum / total;
  });
}
