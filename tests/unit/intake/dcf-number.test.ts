import { describe, expect, test } from 'vitest';
import { findDcfNumber, getDcfDistance } from '../../../src-core/intake/dcf-number.ts';

describe('a camera’s number', () => {
  test('is four characters and 0001 to 9999, in a folder of three digits and five characters', () => {
    expect(findDcfNumber('IMG_0250.MOV', '100APPLE')).toEqual({
      series: 'IMG_',
      value: 250,
      folder: 100,
      isEdited: false,
    });
    expect(findDcfNumber('DSC_9999.mov', '999NIKON')).toMatchObject({
      series: 'DSC_',
      value: 9999,
      folder: 999,
    });
    expect(findDcfNumber('GX010042.MP4', null)).toMatchObject({ series: 'GX01', value: 42, folder: null });
  });

  test.each([
    'IMG_0000.MOV',
    'IMG_250.MOV',
    'IMG_00250.MOV',
    'IMG-0250.MOV',
    'IMG_0250',
    '20260302.MOV',
    'clip.mp4',
  ])('%s has none', (name) => {
    expect(findDcfNumber(name, '100APPLE')).toBeNull();
  });

  test.each(['099APPLE', '1000APPLE', '100APPL', 'Teal', ''])('%s is no camera’s folder', (folder) => {
    expect(findDcfNumber('IMG_0250.MOV', folder)?.folder).toBeNull();
  });

  test('of an edited copy is that of its original (iOS, common practice)', () => {
    expect(findDcfNumber('IMG_E0250.MOV', null)).toEqual({
      series: 'IMG_',
      value: 250,
      folder: null,
      isEdited: true,
    });
    expect(findDcfNumber('IMG_E0000.MOV', null)).toBeNull();
  });
});

test.each([
  [9999, 1, 1],
  [1, 9999, 1],
  [9998, 2, 3],
  [1, 2, 1],
  [250, 250, 0],
  [1, 5000, 4999],
  [1, 5001, 4999],
])('from %i to %i it is %i steps on the circle', (a, b, steps) => {
  expect(getDcfDistance(a, b)).toBe(steps);
});
