import { describe, expect, test } from 'vitest';
import { REPS_RULE } from '../../../src-core/evidence/reps-rule.ts';
import { findLagPath } from '../../../src-core/signal/lag-path.ts';
import { buildLagProducts, correlateAt } from '../../../src-core/signal/lag-products.ts';
import { scoreLags } from '../../../src-core/signal/lag-scores.ts';
import { makeVectors } from './made-vectors.ts';

const TURN = 2 * Math.PI;

/** Cycle lengths along the best path, in seconds: shortest, median, longest; and the evidence per frame. */
function findCycle(vectors: ReturnType<typeof makeVectors>, range: readonly [number, number] = [0.22, 9]) {
  const scores = scoreLags(vectors, range, REPS_RULE.score);
  const path = findLagPath(scores, REPS_RULE.path);
  const lengths = Float64Array.from(path.lagAt, (index) => (scores.lags[index] ?? 0) / vectors.rateHz).sort();
  return {
    shortest: lengths[0] ?? 0,
    median: lengths[lengths.length >> 1] ?? 0,
    longest: lengths.at(-1) ?? 0,
    evidence: path.evidence / Math.max(1, vectors.frameCount),
  };
}

describe('correlation at a lag', () => {
  const products = buildLagProducts(
    makeVectors(20, (second, place) => Math.sin(TURN * (second / 2 + place / 8)), 0),
    100,
  );
  const all = { from: 0, to: 300 };

  test('is 1 after a whole cycle and -1 after half of one', () => {
    expect(correlateAt(products, 30, all, 0)).toBeCloseTo(1, 5);
    expect(correlateAt(products, 15, all, 0)).toBeCloseTo(-1, 5);
    expect(correlateAt(products, 7.5, all, 0)).toBeCloseTo(0, 2);
  });

  test('is less the more energy is asked for', () => {
    expect(correlateAt(products, 30, all, 0.25)).toBeCloseTo(0.8, 1);
  });

  test('is not known beyond what was multiplied or the clip is long', () => {
    expect(correlateAt(products, 101, all, 0)).toBeNaN();
    expect(correlateAt(products, 30, { from: 290, to: 300 }, 0)).toBeNaN();
  });
});

describe('the cycle length', () => {
  test.each([0.25, 0.4, 0.9, 1.7, 3.1, 6, 8])(
    'of %d s is found, neither its half nor its double',
    (cycle) => {
      // Down and up are not alike: two harmonics.
      const vectors = makeVectors(Math.max(12, 4 * cycle), (second, place) => {
        const phase = TURN * (second / cycle);
        return Math.sin(phase + place) + (cycle > 0.5 ? 0.4 * Math.cos(2 * phase + 2 * place) : 0);
      });
      const { median } = findCycle(vectors);
      expect(median / cycle).toBeGreaterThan(0.93);
      expect(median / cycle).toBeLessThan(1.07);
    },
  );

  test('holds both sides where left and right differ', () => {
    const vectors = makeVectors(20, (second, place) => {
      const side = Math.floor(second) % 2 === 0 ? 1 : 0;
      return Math.sin(TURN * second) * (place % 2 === side ? 1 : 0.2);
    });
    expect(findCycle(vectors).median).toBeCloseTo(2, 0);
  });

  test('is followed while it grows by a third', () => {
    const vectors = makeVectors(30, (second, place) =>
      Math.sin(TURN * (30 * Math.log(1 + second / 60)) + place),
    );
    const { shortest, longest } = findCycle(vectors);
    // The pace is 30 / (60 + t) cycles a second: from 2 s to 3 s a cycle.
    expect(shortest).toBeLessThan(2.25);
    expect(longest).toBeGreaterThan(2.7);
  });

  test('may be the very longest that the exercise allows', () => {
    const vectors = makeVectors(24, (second, place) => Math.sin((TURN * second) / 3 + place));
    // Within half of what neighbouring lengths lie apart.
    expect(Math.abs(Math.log2(findCycle(vectors, [1.4, 3]).median / 3))).toBeLessThan(1 / 32);
  });

  test('is the one that the exercise allows', () => {
    const vectors = makeVectors(20, (second, place) => Math.sin(TURN * second + place));
    expect(findCycle(vectors, [1.6, 2.6]).median).toBeCloseTo(2, 0);
    expect(findCycle(vectors, [0.6, 1.4]).median).toBeCloseTo(1, 0);
  });

  test('of noise has next to nothing to show for it', () => {
    const noise = makeVectors(20, () => 0, 1);
    const movement = makeVectors(20, (second, place) => Math.sin(TURN * second + place));
    expect(findCycle(noise).evidence).toBeLessThan(0.15 * findCycle(movement).evidence);
  });

  test('of a clip that is shorter than any is none', () => {
    const scores = scoreLags(
      makeVectors(0.3, () => 1),
      [0.22, 9],
      REPS_RULE.score,
    );
    expect(scores.lags).toHaveLength(0);
    expect(findLagPath(scores, REPS_RULE.path).evidence).toBe(0);
  });
});
