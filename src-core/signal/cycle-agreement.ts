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

/**
 * Compares the flow of all cells (`columns` of them in a row, right and down for each) one and two cycles later.
 * `phases` as in a phase path: growing through a run, NaN at rest; a later run begins anew.
 */
export function measureAgreement(cells: FlowVectors, columns: number, phases: Float64Array): CycleAgreement {
  const near = listPairs(phases, 1);
  const straight = lookStraight(cells.size);
  const margin = columns >> 1;
  let mirrored = -1;
  for (let axis = margin; axis <= 2 * (columns - 1) - margin; axis++)
    mirrored = Math.max(mirrored, correlate(cells, near, lookInMirror(cells.size, columns, axis)));
  return {
    once: correlate(cells, near, straight),
    mirrored,
    twice: correlate(cells, listPairs(phases, 2), straight),
  };
}

/** Phases are sums of steps: a whole cycle may be a rounding error short of one. */
const ROUNDING = 1e-9;

/** Pairs of frames, one after another, the second of each so many cycles after the first and in the same run. */
function listPairs(phases: Float64Array, cycles: number): number[] {
  const pairs: number[] = [];
  let later = 0;
  for (let frame = 0; frame < phases.length; frame++) {
    const goal = (phases[frame] as number) + cycles - ROUNDING;
    later = Math.max(later, frame);
    while (goesOn(phases, later) && (phases[later] as number) < goal) later++;
    if ((phases[later] as number) >= goal) pairs.push(frame, later);
  }
  return pairs;
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

function correlate({ values, size }: FlowVectors, pairs: readonly number[], look: Look): number {
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
  return products / Math.sqrt(first * second + 1e-12);
}
