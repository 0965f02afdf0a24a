import { convertToLab, convertToRgb } from '../platform/cielab.ts';
import type { ColourFrame } from './colour-frame.ts';

/**
 * How a place looks, on a coarse grid of square cells: colours and the directions of edges, and nothing finer, so
 * that no person can be recognised from it. A look-alike's description, not a picture.
 */
export interface PlaceLook {
  readonly columns: number;
  readonly rows: number;
  /**
   * Seven whole numbers a cell, row by row: CIELAB lightness, a and b; then how much edge runs along each of four
   * directions (level, rising, upright, falling), in luma steps a pixel times ten.
   */
  readonly cells: readonly number[];
}

/** How many numbers describe one cell: colour first, then gradients. */
export const CELL_NUMBERS = 7;

/** Side of a cell in pixels of the small colour picture: 16 cells on the longer side. */
const CELL_PIXELS = 8;

const DIRECTIONS = 4;

/** Describes the picture that {@link buildMedianFrame} leaves of a clip. */
export function describePlace(frame: ColourFrame): PlaceLook {
  const columns = Math.floor(frame.width / CELL_PIXELS);
  const rows = Math.floor(frame.height / CELL_PIXELS);
  const cells: number[] = [];
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      cells.push(...describeColour(frame, column, row), ...describeEdges(frame, column, row));
    }
  }
  return { columns, rows, cells };
}

function describeColour(frame: ColourFrame, column: number, row: number): readonly number[] {
  const { width, height, yuv } = frame;
  const half = CELL_PIXELS / 2;
  const quarter = (width / 2) * (height / 2);
  const luma = sumBlock(yuv, {
    from: row * CELL_PIXELS * width + column * CELL_PIXELS,
    width,
    side: CELL_PIXELS,
  });
  const from = width * height + row * half * (width / 2) + column * half;
  const blueness = sumBlock(yuv, { from, width: width / 2, side: half });
  const redness = sumBlock(yuv, { from: from + quarter, width: width / 2, side: half });
  const rgb = convertToRgb(luma / CELL_PIXELS ** 2, blueness / half ** 2, redness / half ** 2);
  // Adding 0 makes -0, which no file can hold, a 0.
  return convertToLab(rgb).map((value) => Math.round(value) + 0);
}

interface Block {
  readonly from: number;
  readonly width: number;
  readonly side: number;
}

function sumBlock(plane: Uint8Array, { from, width, side }: Block): number {
  let sum = 0;
  for (let row = 0; row < side; row++) {
    for (let column = 0; column < side; column++) sum += plane[from + row * width + column] ?? 0;
  }
  return sum;
}

/** Edge strength by the direction in which the edge runs, a mean over the cell's pixels. */
function describeEdges({ width, height, yuv }: ColourFrame, column: number, row: number): readonly number[] {
  const sums = new Float64Array(DIRECTIONS);
  let pixels = 0;
  for (let y = Math.max(1, row * CELL_PIXELS); y < Math.min(height - 1, (row + 1) * CELL_PIXELS); y++) {
    for (
      let x = Math.max(1, column * CELL_PIXELS);
      x < Math.min(width - 1, (column + 1) * CELL_PIXELS);
      x++
    ) {
      const at = y * width + x;
      const right = ((yuv[at + 1] ?? 0) - (yuv[at - 1] ?? 0)) / 2;
      const down = ((yuv[at + width] ?? 0) - (yuv[at - width] ?? 0)) / 2;
      addEdge(sums, right, down);
      pixels += 1;
    }
  }
  return [...sums].map((sum) => (pixels === 0 ? 0 : Math.round((sum / pixels) * 10)));
}

/** Shares a pixel's slope between the two nearest directions. */
function addEdge(sums: Float64Array, right: number, down: number): void {
  const strength = Math.hypot(right, down);
  if (strength === 0) return;
  // An edge runs across its slope; half a turn further it is the same edge.
  const turn = Math.atan2(right, down) / Math.PI + 1;
  const place = (turn % 1) * DIRECTIONS;
  const first = Math.floor(place) % DIRECTIONS;
  const share = place - Math.floor(place);
  const second = (first + 1) % DIRECTIONS;
  sums[first] = (sums[first] ?? 0) + strength * (1 - share);
  sums[second] = (sums[second] ?? 0) + strength * share;
}
