import { CELL_NUMBERS, type PlaceLook } from './place-look.ts';

/** Differences that count as one step: lightness, a, b (CIELAB), and edges as a share of the picture's mean edge. */
const STEPS = { lightness: 16, colour: 8, edge: 1.2 } as const;

/** Cells by which the second picture may lie beside the first: tablets are never put down twice in one spot. */
const REACH = { columns: 2, rows: 1 } as const;

/** Of the smaller picture's cells, so many must lie over the other's. */
const LEAST_OVERLAP = 0.5;

/** What a cell of a shift costs, so that none is taken for nothing. */
const SHIFT_COST = 0.01;

/**
 * How unlike two places look, 0 (the same) to 1: the mean over the cells that lie over each other, at the best
 * small shift. One cell adds at most 1, so that somebody standing before the camera spoils his cells alone.
 * Pictures of another shape are laid middle on middle; the same lens turned sees the same angle a cell.
 */
export function compareLooks(one: PlaceLook, other: PlaceLook): number {
  const known = compared.get(one)?.get(other) ?? compared.get(other)?.get(one);
  if (known !== undefined) return known;
  const apart = compareAnew(one, other);
  const own = compared.get(one) ?? new WeakMap<PlaceLook, number>();
  compared.set(one, own.set(other, apart));
  return apart;
}

// Each look of a lesson is compared with each, either way round, and again after every clip that comes in.
const compared = new WeakMap<PlaceLook, WeakMap<PlaceLook, number>>();

function compareAnew(one: PlaceLook, other: PlaceLook): number {
  const [a, b] = [getPrepared(one), getPrepared(other)];
  const middleColumn = Math.trunc((one.columns - other.columns) / 2);
  const middleRow = Math.trunc((one.rows - other.rows) / 2);
  let best = 1;
  for (let right = -REACH.columns; right <= REACH.columns; right++) {
    for (let down = -REACH.rows; down <= REACH.rows; down++) {
      const apart = compareAt(a, b, { right: middleColumn + right, down: middleRow + down });
      best = Math.min(best, apart + SHIFT_COST * (Math.abs(right) + Math.abs(down)));
    }
  }
  return best;
}

interface Prepared {
  readonly columns: number;
  readonly rows: number;
  readonly values: Float64Array;
}

const prepared = new WeakMap<PlaceLook, Prepared>();

function getPrepared(look: PlaceLook): Prepared {
  const known = prepared.get(look) ?? prepare(look);
  prepared.set(look, known);
  return known;
}

/** Numbers in steps, with the picture's mean lightness taken out and its edges as shares of their mean. */
function prepare({ columns, rows, cells }: PlaceLook): Prepared {
  const count = Math.max(1, columns * rows);
  let lightness = 0;
  let edges = 0;
  cells.forEach((value, at) => {
    const part = at % CELL_NUMBERS;
    if (part === 0) lightness += value / count;
    if (part > 2) edges += value / (count * (CELL_NUMBERS - 3));
  });
  const values = Float64Array.from(cells, (value, at) => {
    const part = at % CELL_NUMBERS;
    if (part === 0) return (value - lightness) / STEPS.lightness;
    return part <= 2 ? value / STEPS.colour : value / Math.max(1, edges) / STEPS.edge;
  });
  return { columns, rows, values };
}

/** The mean over the cells that lie over each other when `other` is moved; 1 where too few do. */
function compareAt(one: Prepared, other: Prepared, shift: { right: number; down: number }): number {
  let sum = 0;
  let cells = 0;
  for (let row = Math.max(0, shift.down); row < Math.min(one.rows, other.rows + shift.down); row++) {
    const lastColumn = Math.min(one.columns, other.columns + shift.right);
    for (let column = Math.max(0, shift.right); column < lastColumn; column++) {
      const here = (row * one.columns + column) * CELL_NUMBERS;
      const there = ((row - shift.down) * other.columns + column - shift.right) * CELL_NUMBERS;
      sum += compareCells(one.values, here, other.values, there);
      cells += 1;
    }
  }
  const smaller = Math.min(one.columns * one.rows, other.columns * other.rows);
  return cells < LEAST_OVERLAP * smaller ? 1 : sum / cells;
}

/** 0 for equal cells, towards 1 the more steps lie between them. */
function compareCells(one: Float64Array, here: number, other: Float64Array, there: number): number {
  let steps = 0;
  for (let part = 0; part < CELL_NUMBERS; part++) {
    const apart = (one[here + part] ?? 0) - (other[there + part] ?? 0);
    steps += apart * apart;
  }
  return 1 - Math.exp(-steps / 2);
}
