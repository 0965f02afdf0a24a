import { describe, expect, test } from 'vitest';
import { REPS_RULE } from '../../src-core/evidence/reps-rule.ts';
import { buildFlowBand } from '../../src-core/signal/flow-band.ts';
import type { FlowVectors } from '../../src-core/signal/flow-vectors.ts';
import { findLagPath } from '../../src-core/signal/lag-path.ts';
import { buildLagProducts, correlateAt } from '../../src-core/signal/lag-products.ts';
import { scoreLags } from '../../src-core/signal/lag-scores.ts';
import { measureCounts } from '../bench/count-metrics.ts';

// Box, Jenkins & Reinsel, "Time Series Analysis: Forecasting and Control": Series G, international airline passengers in
// thousands, monthly, January 1949 to December 1960.
const PASSENGERS = [
  112, 118, 132, 129, 121, 135, 148, 148, 136, 119, 104, 118, 115, 126, 141, 135, 125, 149, 170, 170, 158,
  133, 114, 140, 145, 150, 178, 163, 172, 178, 199, 199, 184, 162, 146, 166, 171, 180, 193, 181, 183, 218,
  230, 242, 209, 191, 172, 194, 196, 196, 236, 235, 229, 243, 264, 272, 237, 211, 180, 201, 204, 188, 235,
  227, 234, 264, 302, 293, 259, 229, 203, 229, 242, 233, 267, 269, 270, 315, 364, 347, 312, 274, 237, 278,
  284, 277, 317, 313, 318, 374, 413, 405, 355, 306, 271, 306, 315, 301, 356, 348, 355, 422, 465, 467, 404,
  347, 305, 336, 340, 318, 362, 348, 363, 435, 491, 505, 404, 359, 310, 337, 360, 342, 406, 396, 420, 472,
  548, 559, 463, 407, 362, 405, 417, 391, 419, 461, 472, 535, 622, 606, 508, 461, 390, 432,
];

// The same book: Series E, Wölfer sunspot numbers, yearly, 1770 to 1869.
const SUNSPOTS = [
  101, 82, 66, 35, 31, 7, 20, 92, 154, 125, 85, 68, 38, 23, 10, 24, 83, 132, 131, 118, 90, 67, 60, 47, 41, 21,
  16, 6, 4, 7, 14, 34, 45, 43, 48, 42, 28, 10, 8, 2, 0, 1, 5, 12, 14, 35, 46, 41, 30, 24, 16, 7, 4, 2, 8, 17,
  36, 50, 62, 67, 71, 48, 28, 8, 13, 57, 122, 138, 103, 86, 63, 37, 24, 11, 15, 40, 62, 98, 124, 96, 66, 64,
  54, 39, 21, 7, 4, 23, 55, 94, 96, 77, 59, 44, 47, 30, 16, 7, 37, 74,
];

/** A series as frames of one number, one a second: lags in seconds are lags in the series' own unit. */
function asFrames(values: readonly number[]): FlowVectors {
  return { rateHz: 1, frameCount: values.length, size: 1, values: Float32Array.from(values) };
}

/** The whole lag with the highest autocorrelation from 3 to 20, trend taken out. */
function findPeak(values: readonly number[]): { lag: number; height: number } {
  const products = buildLagProducts(buildFlowBand(asFrames(values), 8), 24);
  const all = { from: 0, to: values.length };
  const peaks = Array.from({ length: 18 }, (_, index) => ({
    lag: index + 3,
    height: correlateAt(products, index + 3, all, 0),
  }));
  return peaks.reduce((best, peak) => (peak.height > best.height ? peak : best));
}

/** Median of the cycle lengths that the path goes along. */
function findCycle(values: readonly number[]): number {
  const scores = scoreLags(asFrames(values), [3, 20], REPS_RULE.score);
  const lengths = Float64Array.from(
    findLagPath(scores, REPS_RULE.path).lagAt,
    (index) => scores.lags[index] ?? 0,
  ).sort();
  return lengths[lengths.length >> 1] ?? 0;
}

describe('series whose cycle is known', () => {
  test('airline passengers come back after 12 months (Series G)', () => {
    const { lag, height } = findPeak(PASSENGERS.map(Math.log));
    expect(lag).toBe(12);
    expect(height).toBeGreaterThan(0.8);
    expect(Math.round(findCycle(PASSENGERS.map(Math.log)))).toBe(12);
  });

  test('sunspots come back after 11 years or a little less (Series E)', () => {
    const { lag } = findPeak(SUNSPOTS);
    expect([10, 11]).toContain(lag);
    expect(findCycle(SUNSPOTS)).toBeGreaterThan(9.9);
    expect(findCycle(SUNSPOTS)).toBeLessThan(12.1);
  });
});

// Hu et al., "TransRAC", CVPR 2022, and its evaluation code (testing/test_looping.py) define MAE as the mean of
// |found − true| / true and OBO as the share of clips within one. The figures were worked out by hand.
describe('errors of counts', () => {
  const pairs = [
    { found: 10, truth: 10 },
    { found: 8, truth: 9 },
    { found: 0, truth: 4 },
    { found: 5, truth: 7 },
  ];

  test('are those of a worked example', () => {
    const errors = measureCounts(pairs);
    expect(errors.mae).toBeCloseTo(0.349206, 6);
    expect(errors.obo).toBe(0.5);
    expect(errors.exact).toBe(0.25);
    expect(errors.rawMae).toBe(1.75);
    expect(errors.rmse).toBeCloseTo(2.291288, 6);
  });

  test('leave clips without reps out of the share, and keep them in the rest', () => {
    const errors = measureCounts([...pairs, { found: null, truth: 0 }, { found: 3, truth: 0 }]);
    expect(errors.mae).toBeCloseTo(0.349206, 6);
    expect(errors.obo).toBeCloseTo(3 / 6, 6);
    expect(errors.rawMae).toBeCloseTo(10 / 6, 6);
  });

  test('take none found for no reps', () => {
    expect(measureCounts([{ found: null, truth: 5 }]).mae).toBe(1);
  });
});
