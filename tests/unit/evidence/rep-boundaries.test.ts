import { describe, expect, test } from 'vitest';
import { placeBoundaries } from '../../../src-core/evidence/rep-boundaries.ts';

/** A run of a cycle a second that turns where so much of its first cycle is over. */
const run = (
  turnsAt: number,
  ends: { readonly startsAtRest?: boolean; readonly endsAtRest?: boolean } = {},
) => ({
  ...{ first: 0, last: 90, cycles: 6.4, explained: 1, score: 1, startsAtRest: false, endsAtRest: false },
  energyAt: (cycles: number) => Math.sin(Math.PI * (cycles - turnsAt)) ** 2,
  secondsAt: (cycles: number) => cycles,
  ...ends,
});

describe('the cycles of a run', () => {
  test.each([0.1, 0.3, 0.4])('cut off at both ends begin where the movement turns (%d)', (turnsAt) => {
    const boundaries = placeBoundaries(run(turnsAt), 6, 99);
    expect(boundaries).toHaveLength(7);
    for (const [at, seconds] of boundaries.entries()) {
      expect(Math.abs(seconds - turnsAt - at)).toBeLessThanOrEqual(1 / 32);
    }
  });

  test('begin at the rest that the run begins or ends with', () => {
    expect(placeBoundaries(run(0.2, { startsAtRest: true }), 6, 99)[0]).toBe(0);
    expect(placeBoundaries(run(0.2, { endsAtRest: true }), 6, 99)[6]).toBeCloseTo(6.4, 9);
  });

  test('are in the middle where the movement is alike all along, and never leave the clip', () => {
    const even = { ...run(0), energyAt: () => 1 };
    expect(placeBoundaries(even, 6, 99)[0]).toBeCloseTo(0.2, 9);
    expect(placeBoundaries(even, 7, 6.2)).toEqual([
      0,
      ...[0.7, 1.7, 2.7, 3.7, 4.7, 5.7].map((at) => expect.closeTo(at, 9)),
      6.2,
    ]);
  });
});
