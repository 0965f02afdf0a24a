import { describe, expect, test } from 'vitest';
import { createLumaLevel, fillSlopes, halveLuma, smoothLuma } from '../../../src-core/signal/luma-level.ts';

describe('a level of luma', () => {
  test('stays flat under smoothing, edges included', () => {
    const luma = new Float32Array(12 * 7).fill(80);
    smoothLuma(luma, 12, new Float32Array(12 * 7));
    expect([...luma]).toEqual(new Array(84).fill(80));
  });

  test('spreads a point by the binomial weights and loses none of it', () => {
    const luma = new Float32Array(81);
    luma[40] = 256;
    smoothLuma(luma, 9, new Float32Array(81));
    expect(luma[40]).toBe(36);
    expect(luma[38]).toBe(6);
    expect(luma[20]).toBe(1);
    expect(luma.reduce((sum, value) => sum + value, 0)).toBe(256);
  });

  test('has the slopes of a ramp, and none on the border', () => {
    const level = createLumaLevel(6, 5);
    for (let at = 0; at < 30; at++) level.luma[at] = 3 * (at % 6) - 2 * Math.floor(at / 6);
    fillSlopes(level);
    expect([level.slopeX[13], level.slopeY[13]]).toEqual([3, -2]);
    expect([level.slopeX[12], level.slopeY[2]]).toEqual([0, 0]);
  });

  test('halves to the means of four, and leaves an odd column out', () => {
    const from = createLumaLevel(5, 4);
    from.luma.set([1, 3, 5, 7, 99, 1, 3, 5, 7, 99, 0, 0, 8, 8, 99, 0, 0, 8, 8, 99]);
    const to = createLumaLevel(2, 2);
    halveLuma(from, to);
    expect([...to.luma]).toEqual([2, 6, 0, 8]);
  });
});
