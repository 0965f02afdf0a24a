import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { spread } from '../../../../renderer/features/line-up/spread.ts';

describe('tickets make room for each other', () => {
  test('those far enough apart stay where they are', () => {
    expect(spread([10, 20, 30], 5)).toEqual([10, 20, 30]);
  });

  test('two too near move apart evenly', () => {
    expect(spread([50, 52], 4)).toEqual([49, 53]);
  });

  test('a crowd moves as one, and keeps its order', () => {
    expect(spread([50, 50, 50], 10)).toEqual([40, 50, 60]);
  });

  test('the answer is in the order given, not in the order of places', () => {
    expect(spread([60, 50, 58], 4)).toEqual([61, 50, 57]);
  });

  test('nothing is pushed over the edge while there is room', () => {
    expect(spread([0, 1], 10)).toEqual([5, 15]);
    expect(spread([99, 100], 10)).toEqual([85, 95]);
  });

  test('whatever comes, neighbours keep their distance', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 100, noNaN: true }), { maxLength: 40 }), (places) => {
        const sorted = [...spread(places, 2)].toSorted((one, other) => one - other);
        sorted.slice(1).forEach((place, at) => {
          expect(place - (sorted[at] ?? 0)).toBeGreaterThan(2 - 1e-6);
        });
      }),
    );
  });
});
