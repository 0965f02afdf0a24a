import type { FlowVectors } from './flow-vectors.ts';

/** Directions that flow is sorted by: down, aslant down, sideways, aslant up, up. Left and right are one. */
const DIRECTIONS = [90, 45, 0, -45, -90].map((degrees) => {
  const angle = (degrees * Math.PI) / 180;
  // An upright direction is its own mirror image; each of the others stands for two.
  return { right: Math.cos(angle), down: Math.sin(angle), weight: Math.abs(degrees) === 90 ? 1 : Math.SQRT2 };
});
/** Heights that it is sorted by: a movement keeps to its own wherever it is in the picture. */
const BANDS = 3;

/**
 * The flow of whole bands of the picture by direction, whichever side it is on and whichever way it faces: blind to where
 * in a band something moves, and to left and right. A step with the left and one with the right foot are alike to it, and
 * so are those of somebody whom the camera loses and finds again. `cells` holds `columns` cells in a row.
 */
export function buildWholePicture(cells: FlowVectors, columns: number): FlowVectors {
  const { frameCount, rateHz, size: cellSize, values: flow } = cells;
  const size = BANDS * DIRECTIONS.length;
  const values = new Float32Array(frameCount * size);
  const shares = shareRows(cellSize / 2 / columns);
  for (let frame = 0; frame < frameCount; frame++) {
    for (let at = 0; at < cellSize; at += 2) {
      const right = flow[frame * cellSize + at] as number;
      const down = flow[frame * cellSize + at + 1] as number;
      const { band, part } = shares[Math.floor(at / 2 / columns)] as RowShare;
      const first = frame * size + band * DIRECTIONS.length;
      for (const [index, direction] of DIRECTIONS.entries()) {
        const along = direction.down * down;
        const across = direction.right * right;
        const moved = direction.weight * (Math.max(0, along + across) + Math.max(0, along - across));
        values[first + index] = (values[first + index] as number) + (1 - part) * moved;
        if (part === 0) continue;
        const next = first + DIRECTIONS.length + index;
        values[next] = (values[next] as number) + part * moved;
      }
    }
  }
  return { rateHz, frameCount, size, values };
}

/** Which band a row of cells lies in, and how much of it counts for the band below. */
interface RowShare {
  readonly band: number;
  readonly part: number;
}

function shareRows(rows: number): RowShare[] {
  return Array.from({ length: rows }, (_, row) => {
    const place = Math.min(BANDS - 1, Math.max(0, ((row + 0.5) / rows) * BANDS - 0.5));
    const band = Math.floor(place);
    return { band, part: place - band };
  });
}
