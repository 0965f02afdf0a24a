import type { LumaLevel } from './luma-level.ts';

/** A grid over one picture, and the sums that its flow is solved from. */
interface CellSums {
  readonly columns: number;
  readonly rows: number;
  /** Per cell and slope product: xx, xy, yy, x·change, y·change; five planes of `columns × rows`. */
  readonly sums: Float32Array;
  readonly spare: Float32Array;
}

/** The coarse grid, and the fine one whose cells are a quarter of its; reused from frame to frame. */
export interface FlowGrid extends CellSums {
  readonly fine: CellSums;
  /** Which fine cell column and row each pixel column and row lies in. */
  readonly columnOf: Uint8Array;
  readonly rowOf: Uint8Array;
}

const PLANES = 5;
/** Slope energy per pixel (luma steps per pixel, squared) below which a cell's flow is drawn towards 0: bare walls. */
const FLAT_SLOPE = 4;

/** Cells for pictures of a size: 12 along the long side, and as near to square as they come along the short one. */
export function createFlowGrid(width: number, height: number): FlowGrid {
  const long = 12;
  const short = Math.max(4, Math.round((long * Math.min(width, height)) / Math.max(width, height)) + 1);
  const columns = width >= height ? long : short;
  const rows = width >= height ? short : long;
  const fine = createSums(2 * columns, 2 * rows);
  return {
    ...createSums(columns, rows),
    fine,
    columnOf: Uint8Array.from({ length: width }, (_, x) => Math.floor(((x + 0.5) * fine.columns) / width)),
    rowOf: Uint8Array.from({ length: height }, (_, y) => Math.floor(((y + 0.5) * fine.rows) / height)),
  };
}

function createSums(columns: number, rows: number): CellSums {
  const length = PLANES * columns * rows;
  return { columns, rows, sums: new Float32Array(length), spare: new Float32Array(length) };
}

/** Where the flow of one frame is written: two planes of each grid, and which frame it is. */
export interface FlowTarget extends FlowPlane {
  readonly fine: FlowPlane;
  readonly frame: number;
}

interface FlowPlane {
  readonly u: Float32Array;
  readonly v: Float32Array;
}

/**
 * Flow of every cell from `before` to `warped` (the next picture with the camera's step taken out), in pixels per frame:
 * Lucas–Kanade over overlapping windows of three by three cells with weights 1 2 1, drawn towards 0 where a cell has
 * nothing to hold on to. Longer steps than a few pixels come out too short, with the right sign.
 */
export function readBlockFlow(grid: FlowGrid, before: LumaLevel, warped: Float32Array, to: FlowTarget): void {
  gatherSums(grid, before, warped);
  joinSums(grid);
  const area = before.width * before.height;
  solveGrid(grid, area, to, to.frame);
  solveGrid(grid.fine, area, to.fine, to.frame);
}

/** Each coarse cell's sums from those of its four fine ones. */
function joinSums({ columns, rows, sums, fine }: FlowGrid): void {
  for (let line = 0; line < PLANES * rows; line++) {
    for (let column = 0; column < columns; column++) {
      const above = 2 * line * fine.columns + 2 * column;
      const below = above + fine.columns;
      sums[line * columns + column] =
        (fine.sums[above] as number) +
        (fine.sums[above + 1] as number) +
        (fine.sums[below] as number) +
        (fine.sums[below + 1] as number);
    }
  }
}

function solveGrid(grid: CellSums, area: number, to: FlowPlane, frame: number): void {
  const { columns, rows, sums, spare } = grid;
  for (let plane = 0; plane < PLANES; plane++) {
    const from = plane * columns * rows;
    blurCells(sums, spare, from, { lines: rows, length: columns, toLine: columns, toNext: 1 });
    blurCells(spare, sums, from, { lines: columns, length: rows, toLine: 1, toNext: columns });
  }
  solveCells(grid, (area * FLAT_SLOPE) / (columns * rows), to, frame * columns * rows);
}

function gatherSums({ fine, columnOf, rowOf }: FlowGrid, before: LumaLevel, warped: Float32Array): void {
  const { columns, rows, sums } = fine;
  const { width, height, luma, slopeX, slopeY } = before;
  const cells = columns * rows;
  sums.fill(0);
  for (let row = 1; row < height - 1; row++) {
    const firstCell = (rowOf[row] as number) * columns;
    for (let column = 1; column < width - 1; column++) {
      const at = row * width + column;
      const left = warped[at - 1] as number;
      const right = warped[at + 1] as number;
      const above = warped[at - width] as number;
      const below = warped[at + width] as number;
      const change = (warped[at] as number) - (luma[at] as number);
      const dx = ((slopeX[at] as number) + (right - left) * 0.5) * 0.5;
      const dy = ((slopeY[at] as number) + (below - above) * 0.5) * 0.5;
      // NaN in any of them: seen in one picture only.
      if (Number.isNaN(dx + dy + change)) continue;
      const cell = firstCell + (columnOf[column] as number);
      sums[cell] = (sums[cell] as number) + dx * dx;
      sums[cell + cells] = (sums[cell + cells] as number) + dx * dy;
      sums[cell + 2 * cells] = (sums[cell + 2 * cells] as number) + dy * dy;
      sums[cell + 3 * cells] = (sums[cell + 3 * cells] as number) + dx * change;
      sums[cell + 4 * cells] = (sums[cell + 4 * cells] as number) + dy * change;
    }
  }
}

interface Sweep {
  readonly lines: number;
  readonly length: number;
  readonly toLine: number;
  readonly toNext: number;
}

function blurCells(from: Float32Array, to: Float32Array, first: number, sweep: Sweep): void {
  const { lines, length, toLine, toNext } = sweep;
  for (let line = 0; line < lines; line++) {
    for (let index = 0; index < length; index++) {
      const at = first + line * toLine + index * toNext;
      const before = index > 0 ? (from[at - toNext] as number) : 0;
      const after = index + 1 < length ? (from[at + toNext] as number) : 0;
      to[at] = 0.5 * (from[at] as number) + 0.25 * (before + after);
    }
  }
}

function solveCells({ columns, rows, sums }: CellSums, flat: number, to: FlowPlane, from: number): void {
  const cells = columns * rows;
  for (let cell = 0; cell < cells; cell++) {
    const xx = (sums[cell] as number) + flat;
    const xy = sums[cell + cells] as number;
    const yy = (sums[cell + 2 * cells] as number) + flat;
    const xt = sums[cell + 3 * cells] as number;
    const yt = sums[cell + 4 * cells] as number;
    const scale = 1 / (xx * yy - xy * xy);
    to.u[from + cell] = (xy * yt - yy * xt) * scale;
    to.v[from + cell] = (xy * xt - xx * yt) * scale;
  }
}
