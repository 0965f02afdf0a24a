import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { findHeaviestIncrease } from '../../../src-core/matching/increasing-subsequence.ts';
import { dropFewest } from './every-story.ts';

function drop(...values: readonly number[]): readonly number[] {
  return findHeaviestIncrease(values.map((value) => ({ value, weight: 1 }))).dropped;
}

describe('the heaviest increasing subsequence', () => {
  test('drops nothing from a rising sequence, nor from an empty one', () => {
    expect(drop(0, 1, 2, 5)).toEqual([]);
    expect(drop()).toEqual([]);
  });

  test('drops the first of two swapped neighbours', () => {
    expect(drop(0, 1, 3, 2, 4)).toEqual([2]);
  });

  test('drops the one that was moved far, not the many it passed', () => {
    expect(drop(4, 0, 1, 2, 3)).toEqual([0]);
    expect(drop(1, 2, 3, 4, 0)).toEqual([4]);
  });

  test('drops the earlier of two equal values, since order rises strictly', () => {
    expect(drop(0, 1, 1, 2)).toEqual([1]);
  });

  test('keeps a heavy item against two light ones', () => {
    const items = [
      { value: 2, weight: 5 },
      { value: 0, weight: 2 },
      { value: 1, weight: 2 },
    ];
    expect(findHeaviestIncrease(items)).toEqual({ kept: [0], dropped: [1, 2] });
  });

  test('is exactly the earliest smallest set that any subset search finds', () => {
    const values = fc.array(fc.integer({ min: 0, max: 9 }), { maxLength: 8 });
    fc.assert(
      fc.property(values, (sequence) => {
        expect(drop(...sequence)).toEqual(dropFewest(sequence));
      }),
      { numRuns: 1000 },
    );
  });
});
