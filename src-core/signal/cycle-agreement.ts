import type { FlowVectors } from './flow-vectors.ts';

/** How alike frames are that lie whole cycles apart: correlations, -1 to 1; 0 where no two frames lie that far apart. */
export interface CycleAgreement {
  /** One cycle apart, in place. */
  readonly once: number;
  /** One cycle apart, the later frame seen in a mirror: what one side did, the other does. Best of all upright axes. */
  readonly mirrored: number;
  /** Two cycles apart, in place. */
  readonly twice: number;
}

/** The same of all cycles together, and of each kind of the cycle that agrees best: nobody walked through that one. */
export interface CycleAgreements {
  readonly all: CycleAgreement;
  readonly best: CycleAgreement;
}

/**
 * Compares the flow of all cells (`columns` of them in a row, right and down for each) one and two cycles later.
 * `phases` as in a phase path: growing through a run, NaN at rest; a later run begins anew.
 */
export function measureCycleAgreement(
  cells: FlowVectors,
  columns: number,
  phases: Float64Array,
): CycleAgreements {
  const near = listCyclePairs(phases, 1);
  const straight = lookStraight(cells.size);
  const once = correlate(cells, near, straight);
  const twice = correlate(cells, listCyclePairs(phases, 2), straight);
  const mirrored = { all: -1, best: -1 };
  const margin = columns >> 1;
  for (let axis = margin; axis <= 2 * (columns - 1) - margin; axis++) {
    const { all, best } = correlate(cells, near, lookInMirror(cells.size, columns, axis));
    mirrored.all = Math.max(mirrored.all, all);
    mirrored.best = Math.max(mirrored.best, best);
  }
  return {
    all: { once: once.all, mirrored: mirrored.all, twice: twice.all },
    best: { once: once.best, mirrored: mirrored.best, twice: twice.best },
  };
}

/** Phases are sums of steps: a whole cycle may be a rounding error short of one. */
const ROUNDING = 1e-9;

/** Pairs of frames, one after another, whose first frames lie in one cycle. */
interface CyclePairs {
  readonly frames: number[];
  /** Phase of the first of them. */
  readonly from: number;
  /** How much of the cycle they are. */
  share: number;
}

/** Pairs of frames, the second of each so many cycles after the first and in the same run; cycle by cycle. */
function listCyclePairs(phases: Float64Array, cycles: number): CyclePairs[] {
  const found: CyclePairs[] = [];
  let later = 0;
  for (let frame = 0; frame < phases.length; frame++) {
    const phase = phases[frame] as number;
    const goal = phase + cycles - ROUNDING;
    later = Math.max(later, frame);
    while (goesOn(phases, later) && (phases[later] as number) < goal) later++;
    if (!((phases[later] as number) >= goal)) continue;
    const cycle = found.at(-1);
    const share = cycle ? phase - cycle.from : Number.NaN;
    if (cycle && share >= 0 && share < 1) {
      cycle.frames.push(frame, later);
      cycle.share = share;
    } else found.push({ frames: [frame, later], from: phase, share: 0 });
  }
  return found;
}

/** Whether the run that a frame is in has a next frame. */
function goesOn(phases: Float64Array, frame: number): boolean {
  return (phases[frame + 1] ?? Number.NaN) >= (phases[frame] as number);
}

/** How a frame is looked at: where each of its numbers is found (-1: nowhere), and the sign of what goes to the right. */
interface Look {
  readonly from: Int32Array;
  readonly right: 1 | -1;
}

function lookStraight(size: number): Look {
  return { from: Int32Array.from({ length: size }, (_, at) => at), right: 1 };
}

/** In a mirror that swaps columns which add up to `axis`. */
function lookInMirror(size: number, columns: number, axis: number): Look {
  const from = Int32Array.from({ length: size }, (_, at) => {
    const cell = at >> 1;
    const column = axis - (cell % columns);
    return column < 0 || column >= columns ? -1 : 2 * (cell - (cell % columns) + column) + (at % 2);
  });
  return { from, right: -1 };
}

/** Less of a cycle than this may agree by chance. */
const LEAST_SHARE = 0.6;

function correlate(
  cells: FlowVectors,
  cycles: readonly CyclePairs[],
  look: Look,
): { readonly all: number; readonly best: number } {
  const sums = cycles.map(({ frames }) => sumProducts(cells, frames, look));
  const all = divide(sums.reduce(([a, b, c], [d, e, f]) => [a + d, b + e, c + f], [0, 0, 0]));
  const best = sums.reduce(
    (most, sum, at) => ((cycles[at]?.share ?? 0) > LEAST_SHARE ? Math.max(most, divide(sum)) : most),
    all,
  );
  return { all, best };
}

/** Sums over pairs of frames: their products, and the squares of the first and of the second. */
type Sums = readonly [products: number, first: number, second: number];

function divide([products, first, second]: Sums): number {
  return products / Math.sqrt(first * second + 1e-12);
}

function sumProducts({ values, size }: FlowVectors, pairs: readonly number[], look: Look): Sums {
  let products = 0;
  let first = 0;
  let second = 0;
  for (let pair = 0; pair < pairs.length; pair += 2) {
    const one = (pairs[pair] as number) * size;
    const other = (pairs[pair + 1] as number) * size;
    for (let at = 0; at < size; at++) {
      const here = values[one + at] as number;
      const there = values[other + at] as number;
      const from = look.from[at] as number;
      const seen = from < 0 ? 0 : (values[other + from] as number);
      first += here * here;
      second += there * there;
      products += at % 2 === 0 ? look.right * here * seen : here * seen;
    }
  }
  return [products, first, second];
}
