import { describe, expect, test } from 'vitest';
import { createCameraStep, STEP } from '../../../src-core/signal/camera-step.ts';
import { createLumaLevel } from '../../../src-core/signal/luma-level.ts';
import { warpLuma } from '../../../src-core/signal/warp-luma.ts';

const WIDTH = 9;
const HEIGHT = 7;

/** A level whose luma is given by the place, from the picture's middle. */
function draw(at: (x: number, y: number) => number) {
  const level = createLumaLevel(WIDTH, HEIGHT);
  for (let index = 0; index < WIDTH * HEIGHT; index++)
    level.luma[index] = at((index % WIDTH) - 4, Math.floor(index / WIDTH) - 3);
  return level;
}

function warp(at: (x: number, y: number) => number, step: Partial<Record<keyof typeof STEP, number>>) {
  const camera = createCameraStep();
  for (const [name, value] of Object.entries(step)) camera[STEP[name as keyof typeof STEP]] = value;
  const to = new Float32Array(WIDTH * HEIGHT);
  warpLuma(draw(at), camera, to);
  return (x: number, y: number) => to[(y + 3) * WIDTH + x + 4];
}

describe('a picture brought back by a camera step', () => {
  test('is the same where the camera stood', () => {
    expect(warp((x, y) => 50 + 3 * x - 2 * y, {})(2, -1)).toBeCloseTo(58, 4);
  });

  test('shows at each place what was seen a move, a turn and a zoom away, between pixels too', () => {
    // Moves are in half widths: a ninth of 9 pixels is half a pixel of a half width of 4.5.
    expect(warp((x) => 10 * x, { moveX: 0.5 / 4.5 })(1, 0)).toBeCloseTo(15, 4);
    expect(warp((x) => 10 * x, { turn: 0.1 })(0, 2)).toBeCloseTo(-2, 4);
    expect(warp((_, y) => 10 * y, { zoom: 0.25 })(0, 2)).toBeCloseTo(25, 4);
  });

  test('has its brightness matched', () => {
    expect(warp(() => 130, { gain: 0.2, offset: 10 })(0, 0)).toBeCloseTo(100, 4);
  });

  test('has nothing where it came from outside', () => {
    const seen = warp(() => 90, { moveX: 2 / 4.5 });
    expect(seen(4, 0)).toBeNaN();
    expect(seen(2, 0)).toBeCloseTo(90, 4);
  });
});
