import { describe, expect, test } from 'vitest';
import { parseCorrection, writeCorrection } from '../../../src-core/lesson/clock-correction.ts';

describe('clock corrections as typed', () => {
  test.each([
    ['31', 31],
    ['+31', 31],
    ['−0:45', -45],
    ['-0:45', -45],
    ['1:02:00', 3720],
    [' +2.5 s ', 2.5],
    ['0,5', 0.5],
  ])('%s is %d seconds', (text, seconds) => {
    expect(parseCorrection(text)).toBe(seconds);
  });

  test.each(['', 'soon', '1:75', '--3', '1:2:3:4', '99999999'])('“%s” is none', (text) => {
    expect(parseCorrection(text)).toBeNull();
  });

  // One that rounds up to the next minute or hour among them.
  test.each([31, -45, 3720, 2.5, 2220.3, 59.98, 119.7, -179.6, 3599.8])(
    '%d can be typed again as it is written',
    (seconds) => {
      expect(parseCorrection(writeCorrection(seconds))).toBeCloseTo(seconds, 0);
    },
  );
});
