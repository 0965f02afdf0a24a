import { describe, expect, test } from 'vitest';
import { findPercent, findScaleMark, roundPoints } from '../../../src-core/marking/share.ts';

describe('the share of the points', () => {
  test.each([
    [8, 11, 73],
    [6, 9, 67],
    [9, 11, 82],
    [10, 11, 91],
    [0, 11, 0],
    [11, 11, 100],
    [1, 8, 13],
    [0.145, 1, 15],
    [1.005, 100, 1],
    [2.675, 500, 1],
  ])('%d of %d is %d per cent, halves rounded up', (points, max, percent) => {
    expect(findPercent(points, max)).toBe(percent);
  });

  test('is not defined where nothing could be earned', () => {
    expect(findPercent(0, 0)).toBeNull();
  });

  test('decimals that add up to a whole are whole', () => {
    expect(roundPoints(0.1 + 0.2)).toBe(0.3);
  });
});

describe('the mark of a scale', () => {
  const scale = [
    { mark: '4', fromPercent: 90 },
    { mark: '3', fromPercent: 70 },
    { mark: '2', fromPercent: 50 },
  ];

  test.each([
    [100, '4'],
    [90, '4'],
    [89, '3'],
    [70, '3'],
    [50, '2'],
    [49, '2'],
    [0, '2'],
  ])('%d per cent is %s; the last mark takes all below', (percent, mark) => {
    expect(findScaleMark(percent, scale)).toBe(mark);
  });

  test('may run the other way: labels are the teacher’s', () => {
    const inverted = [
      { mark: '1', fromPercent: 90 },
      { mark: '6', fromPercent: 0 },
    ];
    expect(findScaleMark(95, inverted)).toBe('1');
  });

  test('is not given without a scale, or without a share', () => {
    expect(findScaleMark(95, [])).toBeNull();
    expect(findScaleMark(null, scale)).toBeNull();
  });
});
