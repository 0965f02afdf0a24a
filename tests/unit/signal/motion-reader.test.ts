import { describe, expect, test } from 'vitest';
import { createMotionReader } from '../../../src-core/signal/motion-reader.ts';
import type { FlowPlanes, MotionSeries } from '../../../src-core/signal/motion-series.ts';
import type { DrawnDisc, DrawnView } from './drawn-frames.ts';
import { drawFrame } from './drawn-frames.ts';

const SIZE = { width: 80, height: 45, rateHz: 15 };

function read(frames: readonly Uint8Array[]): MotionSeries {
  const reader = createMotionReader(SIZE);
  for (const frame of frames) reader.push(frame);
  return reader.finish();
}

/** The second frame's camera step: right, down, log zoom, turn. */
function readStep(view: DrawnView, discs: readonly [DrawnDisc[], DrawnDisc[]] = [[], []]): number[] {
  return [...read([drawFrame({}, discs[0]), drawFrame(view, discs[1])]).camera.subarray(4)];
}

/** Mean flow to the right and down over the cells whose middles lie within a rectangle of pixels. */
function meanFlow(motion: FlowPlanes, [left, top, right, bottom]: readonly [number, number, number, number]) {
  const { columns, rows, u, v } = motion;
  const { width, height } = SIZE;
  const cells = Array.from({ length: columns * rows }, (_, cell) => cell).filter((cell) => {
    const x = (((cell % columns) + 0.5) * width) / columns;
    const y = ((Math.floor(cell / columns) + 0.5) * height) / rows;
    return x > left && x < right && y > top && y < bottom;
  });
  const mean = (plane: Float32Array) =>
    cells.reduce((sum, cell) => sum + (plane[columns * rows + cell] ?? 0), 0) / cells.length;
  return { right: mean(u), down: mean(v) };
}

describe('the camera', () => {
  test.each<[string, DrawnView, readonly number[]]>([
    ['stands still', {}, [0, 0, 0, 0]],
    ['moves by parts of a pixel', { moveX: 0.4, moveY: -0.3 }, [0.4, -0.3, 0, 0]],
    ['swings by several pixels', { moveX: 4.5, moveY: 2 }, [4.5, 2, 0, 0]],
    ['turns', { turn: 0.03 }, [0, 0, 0, 0.03]],
    ['zooms', { zoom: -0.04 }, [0, 0, -0.04, 0]],
    ['does all at once', { moveX: -1.2, moveY: 0.8, zoom: 0.02, turn: -0.02 }, [-1.2, 0.8, 0.02, -0.02]],
    ['stands still while the lamp flickers', { gain: 1.12 }, [0, 0, 0, 0]],
  ])('%s and is found to', (_, view, [right = 0, down = 0, zoom = 0, turn = 0]) => {
    const step = readStep(view);
    expect(step[0]).toBeCloseTo(right, 1);
    expect(step[1]).toBeCloseTo(down, 1);
    expect(Math.abs((step[2] ?? 0) - zoom)).toBeLessThan(0.004);
    expect(Math.abs((step[3] ?? 0) - turn)).toBeLessThan(0.004);
  });

  test('is not taken along by somebody who moves before a sixth of the picture', () => {
    const step = readStep({ moveX: 0.5 }, [[{ x: 38, y: 22, radius: 14 }], [{ x: 41, y: 24, radius: 14 }]]);
    expect(Math.abs((step[0] ?? 0) - 0.5)).toBeLessThan(0.15);
    expect(Math.abs(step[1] ?? 0)).toBeLessThan(0.15);
  });
});

describe('a camera that stands before a plain wall', () => {
  /** A wall with one soft post, and somebody in bright stripes who moves sideways before a fifth of it. */
  function drawWall(moved: number): Uint8Array {
    return Uint8Array.from({ length: 80 * 45 }, (_, at) => {
      const [x, y] = [at % 80, Math.floor(at / 80)];
      const isBody = Math.abs(x - 45 - moved) < 9 && Math.abs(y - 25) < 12;
      const stripes = 130 + 90 * Math.sin(1.1 * (x - moved)) * Math.cos(0.7 * y);
      const wall = 120 + 8 * Math.exp(-(((x - 14) / 4) ** 2)) + 5 * Math.sin(y / 6) + 4 * Math.sin(x / 15);
      return Math.round(isBody ? stripes : wall);
    });
  }

  test('is not taken along by the one thing with strong contrasts', () => {
    for (const step of [0.4, 0.8, 1.5]) {
      const { camera } = read([drawWall(0), drawWall(step)]);
      expect(Math.abs(camera[4] ?? 9)).toBeLessThan(0.12 * step);
    }
  });
});

describe('a camera that stands before a group that steps aside together', () => {
  /** Five in bright stripes before sky, a soft ground and one ringed post, all moved by as much. */
  function drawGroup(moved: number): Uint8Array {
    return Uint8Array.from({ length: 80 * 45 }, (_, at) => {
      const [x, y] = [at % 80, Math.floor(at / 80)];
      const isBody = y > 14 && y < 40 && Math.abs(((x - moved) % 16) - 8) < 3.5;
      if (isBody) return Math.round(120 + 80 * Math.sin(0.9 * (x - moved)) * Math.cos(0.5 * y));
      if (Math.abs(x - 16) < 2 && y < 30) return Math.round(110 + 50 * Math.sin(y / 1.5));
      return Math.round(y < 18 ? 130 : 100 + 8 * Math.sin(x / 2) * Math.cos(y / 2));
    });
  }

  test('is not carried along, though nothing that stands still stands out as they do', () => {
    for (const step of [0.5, 1, 1.6]) {
      const { camera } = read([drawGroup(0), drawGroup(step)]);
      expect(Math.abs(camera[4] ?? 9)).toBeLessThan(0.12 * step);
    }
  });
});

describe('the flow', () => {
  test('is nothing where nothing moves, whatever the camera does', () => {
    const motion = read([drawFrame(), drawFrame({ moveX: 1.5, turn: 0.01, gain: 0.95 })]);
    const lengths = motion.u.map((value, at) => Math.hypot(value, motion.v[at] ?? 0));
    expect(lengths.sort()[Math.floor(lengths.length * 0.95)]).toBeLessThan(0.12);
  });

  test('goes the way somebody goes, there and nowhere else', () => {
    const motion = read([
      drawFrame({}, [{ x: 20, y: 22, radius: 7 }]),
      drawFrame({ moveX: -1 }, [{ x: 20, y: 21, radius: 7 }]),
    ]);
    const there = meanFlow(motion, [15, 17, 25, 27]);
    // The background went one to the left: against it, somebody who stays goes one to the right.
    expect(there.right).toBeGreaterThan(0.5);
    expect(there.down).toBeLessThan(-0.5);
    const elsewhere = meanFlow(motion, [45, 5, 75, 40]);
    expect(Math.abs(elsewhere.right) + Math.abs(elsewhere.down)).toBeLessThan(0.05);
  });

  test('keeps two who stand close together apart on the fine grid, and runs them together on the coarse one', () => {
    const motion = read([
      drawFrame({}, [
        { x: 34, y: 22, radius: 5 },
        { x: 45, y: 22, radius: 5 },
      ]),
      drawFrame({}, [
        { x: 34, y: 23, radius: 5 },
        { x: 45, y: 21, radius: 5 },
      ]),
    ]);
    const [left, right] = [30, 41].map((from) => meanFlow(motion.fine, [from, 18, from + 8, 26]).down);
    expect(left).toBeGreaterThan(0.5);
    expect(right).toBeLessThan(-0.5);
    expect(meanFlow(motion, [30, 18, 38, 26]).down).toBeLessThan(0.8 * (left ?? 0));
    expect([motion.fine.columns, motion.fine.rows]).toEqual([2 * motion.columns, 2 * motion.rows]);
  });

  test('is nothing on a bare wall', () => {
    const wall = new Uint8Array(80 * 45).fill(120);
    const motion = read([wall, wall]);
    expect([...motion.u, ...motion.v].every((value) => value === 0)).toBe(true);
  });
});

describe('the series', () => {
  test('has a first frame without motion, and as many frames as were pushed', () => {
    const pair = [drawFrame(), drawFrame({ moveX: 1 })] as const;
    const frames = Array.from({ length: 600 }, (_, index) => pair[index % 2 === 0 ? 0 : 1]);
    const { frameCount, u, camera, columns, rows } = read(frames);
    expect(frameCount).toBe(600);
    expect([u.length, camera.length]).toEqual([600 * columns * rows, 2400]);
    expect([...u.subarray(0, columns * rows), ...camera.subarray(0, 4)].every((value) => value === 0)).toBe(
      true,
    );
    // Rooms made on the way keep what was in the ones before.
    expect(camera[4]).toBeCloseTo(camera[4 * 599] ?? 0, 2);
  });

  test('of no frames is empty', () => {
    const motion = createMotionReader(SIZE).finish();
    expect([motion.frameCount, motion.u.length]).toEqual([0, 0]);
  });

  test('has cells about as many along an upright film', () => {
    const motion = createMotionReader({ width: 45, height: 80, rateHz: 15 }).finish();
    expect([motion.columns, motion.rows]).toEqual([8, 12]);
  });

  test('refuses a frame of another size', () => {
    expect(() => createMotionReader(SIZE).push(new Uint8Array(10))).toThrow('3600');
  });
});
