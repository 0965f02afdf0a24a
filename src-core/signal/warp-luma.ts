import type { CameraStep } from './camera-step.ts';
import { STEP } from './camera-step.ts';
import type { LumaLevel } from './luma-level.ts';

/**
 * Brings `level` back by a camera step, so that its still parts fall on the picture before: `to` gets the luma as it
 * would have been seen there, brightness matched too. Pixels that came from outside the picture get NaN.
 */
export function warpLuma(level: LumaLevel, step: CameraStep, to: Float32Array): void {
  const { width, height } = level;
  const half = width / 2;
  const scale = 1 + (step[STEP.zoom] as number);
  const turn = step[STEP.turn] as number;
  const gain = 1 / (1 + (step[STEP.gain] as number));
  const offset = step[STEP.offset] as number;
  const middleX = (width - 1) / 2;
  const middleY = (height - 1) / 2;
  for (let row = 0; row < height; row++) {
    const down = row - middleY;
    let x = middleX - scale * middleX - turn * down + (step[STEP.moveX] as number) * half;
    let y = middleY - turn * middleX + scale * down + (step[STEP.moveY] as number) * half;
    const end = (row + 1) * width;
    for (let at = row * width; at < end; at++) {
      to[at] = (readBetween(level, x, y) - offset) * gain;
      x += scale;
      y += turn;
    }
  }
}

/** Luma between pixels, the outermost half pixel drawn out a little; NaN outside the picture. */
function readBetween({ luma, width, height }: LumaLevel, x: number, y: number): number {
  if (!(x > -EDGE && y > -EDGE && x < width - 1 + EDGE && y < height - 1 + EDGE)) return Number.NaN;
  const column = Math.min(width - 2, Math.max(0, Math.floor(x)));
  const row = Math.min(height - 2, Math.max(0, Math.floor(y)));
  const fx = x - column;
  const fy = y - row;
  const first = row * width + column;
  const second = first + width;
  const above = (luma[first] as number) + ((luma[first + 1] as number) - (luma[first] as number)) * fx;
  const below = (luma[second] as number) + ((luma[second + 1] as number) - (luma[second] as number)) * fx;
  return above + (below - above) * fy;
}

/** A camera that stands almost still loses no pixels for it. */
const EDGE = 0.5;
