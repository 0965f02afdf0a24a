import { describe, expect, test } from 'vitest';
import { scoreRepFit } from '../../../src-core/evidence/rep-fit.ts';

const stations = [
  { code: 'A', reps: 10, counting: 'cycle' as const, cycleSeconds: [1.5, 4] as [number, number] },
  { code: 'B', reps: 20, counting: 'side' as const, cycleSeconds: [0.4, 0.9] as [number, number] },
  { code: 'C', reps: 10, counting: 'cycle' as const },
];

describe('how repeats fit a station', () => {
  test('speaks for tempo and count, and against the lack of them', () => {
    const scores = scoreRepFit({ count: 10, cycleSeconds: 2 }, stations);
    expect(scores.A).toBeGreaterThan(0.6);
    expect(scores.B).toBeLessThan(0.45);
    expect(scores.C).toBeGreaterThan(0.5);
  });

  test('counts a station of sides twice a cycle', () => {
    const scores = scoreRepFit({ count: 10, cycleSeconds: 0.6 }, stations);
    expect(scores.B).toBeGreaterThan(0.6);
    expect(scores.A).toBeLessThan(0.45);
  });

  test('never outweighs a look-alike', () => {
    for (const score of Object.values(scoreRepFit({ count: 10, cycleSeconds: 2 }, stations))) {
      expect(Math.abs(Math.log(score / (1 - score)))).toBeLessThan(1);
    }
  });

  test('is silent where nothing repeats', () => {
    expect(scoreRepFit({ count: null, cycleSeconds: null }, stations)).toEqual({});
  });
});
