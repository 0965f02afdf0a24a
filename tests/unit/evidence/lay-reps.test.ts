import { describe, expect, test } from 'vitest';
import { layReps, placeReps } from '../../../src-core/evidence/lay-reps.ts';
import { REPS_RULE } from '../../../src-core/evidence/reps-rule.ts';

interface RunShape {
  readonly cycles?: number;
  /** How much of a cycle is done at the first turn. */
  readonly turnsAt?: number;
  readonly startsAtRest?: boolean;
  readonly endsAtRest?: boolean;
}

/** A run of a cycle in two seconds that moves least at one moment of its cycle. */
const run = ({ cycles = 6.4, turnsAt = 0, startsAtRest = false, endsAtRest = false }: RunShape) => ({
  ...{ first: 0, last: 90, cycles, explained: 1, score: 1, startsAtRest, endsAtRest },
  energyAt: (at: number) => Math.sin(Math.PI * (at - turnsAt)) ** 2,
  secondsAt: (at: number) => 2 * at,
});

const lay = (shape: RunShape, counting: 'cycle' | 'side' = 'cycle') =>
  layReps(run(shape), 2, { counting, rule: REPS_RULE });

// Common practice: a rep counts when it is done.
describe('the last rep of a clip', () => {
  const startsAtRest = true;

  test.each([
    [5.98, 6],
    [6.2, 6],
    [6.5, 6],
    [6.8, 6],
    [6.95, 7],
  ])('of %d cycles that start from rest and are cut off makes %d', (cycles, count) => {
    expect(lay({ cycles, startsAtRest }).count).toBe(count);
  });

  test('is a side where sides count', () => {
    expect(lay({ cycles: 6.3, startsAtRest }, 'side').count).toBe(12);
    expect(lay({ cycles: 6.5, startsAtRest }, 'side').count).toBe(13);
  });

  test('is a toss-up only where it is all but done', () => {
    expect(lay({ cycles: 6.3, startsAtRest }).clearness).toBe(1);
    expect(lay({ cycles: 6.88, startsAtRest }).clearness).toBeLessThan(0.1);
  });
});

describe('the first rep of a clip', () => {
  const endsAtRest = true;

  test('counts from its half on where the clip begins amid it', () => {
    expect(lay({ cycles: 6.3, endsAtRest }).count).toBe(6);
    expect(lay({ cycles: 6.8, endsAtRest })).toMatchObject({ count: 7, first: expect.closeTo(-0.2, 9) });
  });

  test('is told by the turns of the movement where the clip cuts both ends', () => {
    expect(lay({ cycles: 6.4, turnsAt: 0.25 })).toMatchObject({ first: 0.25, count: 6 });
    expect(lay({ cycles: 6.4, turnsAt: 0.45 }).count).toBe(6);
    expect(lay({ cycles: 6.9, turnsAt: 0.75 })).toMatchObject({ first: -0.25, count: 7 });
  });
});

describe('between rest and rest', () => {
  const ends = { startsAtRest: true, endsAtRest: true };

  test('the way into the first position and out of the last is no rep', () => {
    for (const cycles of [6, 6.4, 6.8]) expect(lay({ cycles, ...ends }).count).toBe(6);
    expect(lay({ cycles: 6.95, ...ends }).count).toBe(7);
  });

  test('cycles begin where the movement is slowest', () => {
    expect(lay({ cycles: 6.5, turnsAt: 0.25, ...ends }).first).toBeCloseTo(0.25, 9);
    const even = { ...run({ cycles: 6.4, ...ends }), energyAt: () => 1 };
    expect(layReps(even, 2, { counting: 'cycle', rule: REPS_RULE }).first).toBeCloseTo(0.2, 9);
  });

  test('sides come in pairs, and the way to the first from the middle between them is longer', () => {
    expect(lay({ cycles: 6.4, ...ends }, 'side').count).toBe(12);
    expect(lay({ cycles: 6.93, ...ends }).count).toBe(7);
    expect(lay({ cycles: 6.93, ...ends }, 'side').count).toBe(12);
    expect(lay({ cycles: 6.97, ...ends }, 'side').count).toBe(14);
  });
});

describe('where reps begin and end', () => {
  test('is one mark more than there are reps, a step apart, none outside the clip', () => {
    const clip = run({ cycles: 3 });
    expect(placeReps(clip, { first: 0.25, count: 2, step: 1, clearness: 1 }, 99)).toEqual([0.5, 2.5, 4.5]);
    expect(placeReps(clip, { first: -0.5, count: 4, step: 0.5, clearness: 1 }, 2.5)).toEqual([
      0, 0, 1, 2, 2.5,
    ]);
  });
});
