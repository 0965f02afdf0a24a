import { describe, expect, test } from 'vitest';
import { findExportDated } from '../../../src-core/intake/export-dates.ts';

const NOON = Date.parse('2026-03-02T12:00:00Z');
const clips = (seconds: readonly number[], durationSeconds: number | null = 30) =>
  seconds.map((second, index) => ({ id: `c${index}`, readMs: NOON + second * 1000, durationSeconds }));
const ids = (found: ReadonlySet<string>) => [...found].sort();

describe('dates written by an export', () => {
  test('lie nearer together than the clips are long', () => {
    expect(ids(findExportDated(clips([0, 2, 5, 9])))).toEqual(['c0', 'c1', 'c2', 'c3']);
  });

  test('are found among clips with dates of their own', () => {
    expect(ids(findExportDated(clips([-4000, -3000, 0, 1, 3, 2000])))).toEqual(['c2', 'c3', 'c4']);
  });

  test('may be all the same', () => {
    expect(findExportDated(clips([0, 0, 0])).size).toBe(3);
  });

  test('may be those of the import, however long the clips are', () => {
    expect(findExportDated(clips([0, 40, 80]), NOON + 60_000).size).toBe(3);
    expect(findExportDated(clips([0, 40, 80]), NOON + 3_600_000).size).toBe(0);
  });
});

describe('dates of the camera', () => {
  test('one clip after the other, starts or stops', () => {
    expect(findExportDated(clips([0, 31, 62, 95])).size).toBe(0);
    expect(findExportDated(clips([0, 29, 58, 88])).size).toBe(0);
  });

  test('a clip and its edited copy are two, not many', () => {
    expect(findExportDated(clips([0, 0, 400])).size).toBe(0);
  });

  test('clips of unknown length are not accused of overlapping', () => {
    expect(findExportDated(clips([0, 1, 2, 3], null)).size).toBe(0);
  });

  test('a short clip just after a long one is possible: only less than both is not', () => {
    const mixed = [30, 3, 30, 3].map((durationSeconds, index) => ({
      id: `c${index}`,
      readMs: NOON + ([0, 4, 35, 40][index] ?? 0) * 1000,
      durationSeconds,
    }));
    expect(findExportDated(mixed).size).toBe(0);
  });

  test('clips without a date are left out of account', () => {
    const undated = clips([0, 1, 2]).map((clip) => ({ ...clip, readMs: null }));
    expect(findExportDated(undated).size).toBe(0);
  });
});
