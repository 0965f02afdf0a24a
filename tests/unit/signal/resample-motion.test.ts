import { describe, expect, test } from 'vitest';
import type { MotionSeries } from '../../../src-core/signal/motion-series.ts';
import { resampleMotion } from '../../../src-core/signal/resample-motion.ts';

/** One cell that moves by so much in each step. */
const series = (steps: readonly number[]): MotionSeries => ({
  ...{ rateHz: 15, fromSeconds: 0, width: 80, height: 45, columns: 1, rows: 1, frameCount: steps.length },
  u: Float32Array.from(steps),
  v: Float32Array.from(steps, (step) => 0 - step),
  fine: { columns: 1, rows: 1, u: Float32Array.from(steps), v: Float32Array.from(steps, (step) => 0 - step) },
  camera: Float32Array.from(steps.flatMap((step) => [step, 0, 0, 0])),
});
const round = (values: Float32Array) => [...values].map((value) => Math.round(value * 1e4) / 1e4);

describe('motion brought into even steps', () => {
  test('stays what it is where the steps are even', () => {
    const even = series([0, 1, 2, 3]);
    const again = resampleMotion(even, [0, 0.1, 0.2, 0.3], 10);
    expect(round(again.u)).toEqual([0, 1, 2, 3]);
    expect(round(again.fine.v)).toEqual([0, -1, -2, -3]);
    expect(again.frameCount).toBe(4);
  });

  test('is not copied where the steps are even to the millisecond, which is as files tell them', () => {
    const even = series([0, 1, 2, 3]);
    expect(resampleMotion(even, [2, 2.067, 2.133, 2.2], 15).u).toBe(even.u);
    expect(resampleMotion(even, [2, 2.067, 2.137, 2.2], 15).u).not.toBe(even.u);
  });

  test('is steady for a steady movement seen at uneven times', () => {
    const times = [0, 0.1, 0.1667, 0.2667, 0.3333, 0.4333, 0.5];
    const speed = 30;
    const steps = times.map((at, index) => (index === 0 ? 0 : (at - (times[index - 1] ?? 0)) * speed));
    const even = resampleMotion(series(steps), times, 15);
    expect(even.frameCount).toBe(8);
    for (const step of round(even.u).slice(1, -1)) expect(step).toBeCloseTo(2, 2);
    expect(round(even.camera)[4]).toBeCloseTo(2, 2);
  });

  test('loses no way and adds none', () => {
    const times = [3, 3.05, 3.2, 3.21, 3.5, 3.6];
    const even = resampleMotion(series([0, 4, -2, 7, 1, 5]), times, 10);
    expect(even.u.reduce((sum, step) => sum + step, 0)).toBeCloseTo(15, 4);
    expect(even.v.reduce((sum, step) => sum + step, 0)).toBeCloseTo(-15, 4);
  });

  test('of one frame or none is as short', () => {
    expect(resampleMotion(series([0]), [2], 15).frameCount).toBe(1);
    expect(resampleMotion(series([]), [], 15).frameCount).toBe(0);
  });
});
