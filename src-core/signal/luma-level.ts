/** One step of an image pyramid: smoothed luma with its slopes; reused from frame to frame. */
export interface LumaLevel {
  readonly width: number;
  readonly height: number;
  /** Smoothed luma, row by row, 0 to 255. */
  readonly luma: Float32Array;
  /** Central differences of `luma` to the right and downwards, per pixel; 0 on the border. */
  readonly slopeX: Float32Array;
  readonly slopeY: Float32Array;
}

/** A flat black level of this size, in pixels. */
export function createLumaLevel(width: number, height: number): LumaLevel {
  const area = width * height;
  return {
    width,
    height,
    luma: new Float32Array(area),
    slopeX: new Float32Array(area),
    slopeY: new Float32Array(area),
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

/** Fills the slopes of a level from its luma. */
export function fillSlopes(level: LumaLevel): void {
  const { width, height, luma, slopeX, slopeY } = level;
  for (let row = 1; row < height - 1; row++) {
    const end = (row + 1) * width - 1;
    for (let at = row * width + 1; at < end; at++) {
      slopeX[at] = ((luma[at + 1] as number) - (luma[at - 1] as number)) * 0.5;
      slopeY[at] = ((luma[at + width] as number) - (luma[at - width] as number)) * 0.5;
    }
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
