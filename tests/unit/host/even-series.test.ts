import { describe, expect, test } from 'vitest';
import { createEvenSeries } from '../../../src-core/host/even-series.ts';

const push = (count: number, most: number) => {
  const series = createEvenSeries<number>(most);
  for (let item = 0; item < count; item++) series.push(item);
  return series.kept;
};

describe('an even series of unknown length', () => {
  test('is kept whole up to twice what is wanted', () => {
    expect(push(8, 4)).toEqual([0, 1, 2, 3, 4, 5, 6, 7]);
  });

  test('stays evenly spaced and bounded however long it grows', () => {
    expect(push(9, 4)).toEqual([0, 2, 4, 6, 8]);
    for (const count of [1000, 1001, 4097]) {
      const kept = push(count, 4);
      expect(kept.length).toBeGreaterThan(4);
      expect(kept.length).toBeLessThanOrEqual(8);
      const steps = new Set(kept.slice(1).map((item, at) => item - (kept[at] ?? 0)));
      expect([kept[0], steps.size]).toEqual([0, 1]);
    }
  });
});
