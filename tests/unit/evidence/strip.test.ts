import { describe, expect, test } from 'vitest';
import { listStripStills } from '../../../src-core/evidence/strip.ts';

describe('a clip’s strip', () => {
  test('has one numbered still a rep', () => {
    expect(listStripStills({ count: 2, timesSeconds: [3.1, 5.2] }, 12)).toEqual([
      { number: 1, atSeconds: 3.1 },
      { number: 2, atSeconds: 5.2 },
    ]);
  });

  test('is evenly spaced where no reps were found', () => {
    const stills = listStripStills({ count: null, timesSeconds: [] }, 24);
    expect(stills.map(({ atSeconds }) => atSeconds)).toEqual([1, 3, 5, 7, 9, 11, 13, 15, 17, 19, 21, 23]);
    expect(stills.every(({ number }) => number === null)).toBe(true);
  });

  test('is empty for a clip without length', () => {
    expect(listStripStills(null, null)).toEqual([]);
    expect(listStripStills(null, 0)).toEqual([]);
  });
});
