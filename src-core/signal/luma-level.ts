/** One step of an image pyramid: smoothed luma with its slopes; reused from frame to frame. */
export interface LumaLevel {
  readonly width: number;
  readonly height: number;
  /** Smoothed luma, row by row, 0 to 255. */
  readonly luma: Float32Array;
  /** Central differences of `luma` to the right and downwards, per pixel; 0 on the border. */
  readonly slopeX: Float32Array;
  readonly slopeY: Float32Array;
  /**
   * What each region of the picture holds to register by, and the weight that gives every region with something to
   * hold on to the same say, however strong its contrasts are.
   */
  readonly regions: Regions;
}

/** A coarse division of one level, about twelve by seven. */
interface Regions {
  readonly columns: number;
  /** Which region column and row each pixel column and row lies in. */
  readonly columnOf: Uint8Array;
  readonly rowOf: Uint8Array;
  /** One weight a region, row by row. */
  readonly votes: Float32Array;
}

const REGION_COLUMNS = 12;
const REGION_ROWS = 7;

/** Slope energy per pixel (luma steps per pixel, squared) below which a region has next to nothing to say. */
const FLAT_SLOPE = 2;

/** A flat black level of this size, in pixels. */
export function createLumaLevel(width: number, height: number): LumaLevel {
  const area = width * height;
  return {
    width,
    height,
    luma: new Float32Array(area),
    slopeX: new Float32Array(area),
    slopeY: new Float32Array(area),
    regions: {
      columns: REGION_COLUMNS,
      columnOf: Uint8Array.from({ length: width }, (_, x) => Math.floor((x * REGION_COLUMNS) / width)),
      rowOf: Uint8Array.from({ length: height }, (_, y) => Math.floor((y * REGION_ROWS) / height)),
      votes: new Float32Array(REGION_COLUMNS * REGION_ROWS),
    },
  };
}

/** Smooths rows, then columns, with the binomial weights 1 4 6 4 1; `spare` holds what lies between. Works in place. */
export function smoothLuma(luma: Float32Array, width: number, spare: Float32Array): void {
  const height = luma.length / width;
  smoothAlong(luma, spare, { lines: height, length: width, toLine: width, toNext: 1 });
  smoothAlong(spare, luma, { lines: width, length: height, toLine: 1, toNext: width });
}

interface Sweep {
  readonly lines: number;
  readonly length: number;
  readonly toLine: number;
  readonly toNext: number;
}

function smoothAlong(from: Float32Array, to: Float32Array, sweep: Sweep): void {
  const { lines, length, toLine, toNext } = sweep;
  for (let line = 0; line < lines; line++) {
    const last = line * toLine + (length - 1) * toNext;
    let at = line * toLine;
    let far = from[at] as number;
    let near = far;
    let here = far;
    let next = from[Math.min(last, at + toNext)] as number;
    for (; at <= last; at += toNext) {
      const ahead = from[Math.min(last, at + 2 * toNext)] as number;
      to[at] = (far + ahead) * 0.0625 + (near + next) * 0.25 + here * 0.375;
      far = near;
      near = here;
      here = next;
      next = ahead;
    }
  }
}

/** Fills the slopes of a level, and the regions' votes, from its luma. */
export function fillSlopes(level: LumaLevel): void {
  const { width, height, luma, slopeX, slopeY, regions } = level;
  const { columns, columnOf, rowOf, votes } = regions;
  votes.fill(0);
  for (let row = 1; row < height - 1; row++) {
    const first = (rowOf[row] as number) * columns;
    for (let column = 1; column < width - 1; column++) {
      const at = row * width + column;
      const dx = ((luma[at + 1] as number) - (luma[at - 1] as number)) * 0.5;
      const dy = ((luma[at + width] as number) - (luma[at - width] as number)) * 0.5;
      slopeX[at] = dx;
      slopeY[at] = dy;
      const region = first + (columnOf[column] as number);
      votes[region] = (votes[region] as number) + dx * dx + dy * dy;
    }
  }
  const area = (width * height) / votes.length;
  for (let region = 0; region < votes.length; region++) {
    votes[region] = 1 / ((votes[region] as number) / area + FLAT_SLOPE);
  }
}

/** Halves a level both ways (means of four pixels); an odd last column or row is left out. */
export function halveLuma(from: LumaLevel, to: LumaLevel): void {
  for (let row = 0; row < to.height; row++) {
    let above = row * 2 * from.width;
    let at = row * to.width;
    for (let column = 0; column < to.width; column++) {
      const below = above + from.width;
      to.luma[at] =
        ((from.luma[above] as number) +
          (from.luma[above + 1] as number) +
          (from.luma[below] as number) +
          (from.luma[below + 1] as number)) *
        0.25;
      at++;
      above += 2;
    }
  }
}
