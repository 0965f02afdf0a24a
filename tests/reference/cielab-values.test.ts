import { describe, expect, test } from 'vitest';
import { convertToLab, convertToRgb, parseHexColour } from '../../src-core/platform/cielab.ts';

// sRGB primaries in CIELAB under D65, as colour references print them (from memory).
const PRIMARIES = [
  ['#FF0000', [53.24, 80.09, 67.2]],
  ['#00FF00', [87.73, -86.18, 83.18]],
  ['#0000FF', [32.3, 79.19, -107.86]],
  ['#FFFFFF', [100, 0, 0]],
  ['#000000', [0, 0, 0]],
  ['#808080', [53.59, 0, 0]],
] as const;

describe('colours in CIELAB', () => {
  test.each(PRIMARIES)('%s has the published values', (hex, lab) => {
    const found = convertToLab(parseHexColour(hex));
    lab.forEach((value, at) => {
      expect(Math.abs((found[at] ?? Number.NaN) - value)).toBeLessThan(0.05);
    });
  });

  test('the white and black of a film are the white and black of a screen', () => {
    expect(convertToRgb(235, 128, 128).map(Math.round)).toEqual([255, 255, 255]);
    expect(convertToRgb(16, 128, 128).map(Math.round)).toEqual([0, 0, 0]);
  });

  // ITU-R BT.601: red has luma 81, blue difference 90, red difference 240 in studio range.
  test('the red of colour bars is red', () => {
    const [red, green, blue] = convertToRgb(81, 90, 240);
    expect(red).toBeGreaterThan(250);
    expect(Math.max(green, blue)).toBeLessThan(4);
  });
});
