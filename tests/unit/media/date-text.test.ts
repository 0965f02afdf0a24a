import { describe, expect, test } from 'vitest';
import { localAsUtcMs, parseDateText, parseOffset } from '../../../src-core/media/date-text.ts';

const instant = (text: string) => {
  const { instantMs } = parseDateText(text);
  return instantMs === null ? null : new Date(instantMs).toISOString();
};

describe('a written date', () => {
  test.each([
    ['2026-03-02T09:05:06-0500', '2026-03-02T14:05:06.000Z'],
    ['2026-03-02T09:05:06-05:00', '2026-03-02T14:05:06.000Z'],
    ['2026-03-02T14:05:06Z', '2026-03-02T14:05:06.000Z'],
    ['2026-03-02 14:05:06 UTC', '2026-03-02T14:05:06.000Z'],
    ['2026:03:02 09:05:06-05:00', '2026-03-02T14:05:06.000Z'],
    ['2026-03-02T19:50:06+0545', '2026-03-02T14:05:06.000Z'],
    ['2026-03-02T14:05:06.789Z', '2026-03-02T14:05:06.789Z'],
    ['2026-03-02T14:05Z', '2026-03-02T14:05:00.000Z'],
    ['2024-02-29T23:59:59Z', '2024-02-29T23:59:59.000Z'],
  ])('%s is an instant', (text, expected) => {
    expect(instant(text)).toBe(expected);
  });

  test('without an offset is a local time', () => {
    expect(parseDateText('2026:03:02 09:05:06')).toEqual({
      instantMs: null,
      local: '2026-03-02T09:05:06',
      offsetMinutes: null,
    });
  });

  test.each([
    '2026',
    '2026-03',
    '2026-03-02',
    '',
    'yesterday',
    '2026-02-29T10:00:00Z',
    '2026-13-01T10:00:00Z',
    '2026-03-02T24:00:00Z',
    '2026-03-02T10:60:00Z',
    '0000:00:00 00:00:00',
    '2026-03-02T10:00:00Z and more',
  ])('"%s" is no time', (text) => {
    expect(parseDateText(text)).toEqual({ instantMs: null, local: null, offsetMinutes: null });
  });
});

test.each([
  ['+0200', 120],
  ['+02:00', 120],
  ['-0500', -300],
  ['Z', 0],
  ['-00:00', 0],
  ['+05:45', 345],
  ['+19:00', null],
  ['+02:60', null],
  ['02:00', null],
])('the offset %s is %s minutes', (text, minutes) => {
  expect(parseOffset(text)).toBe(minutes);
});

test('a local time that no calendar has is none', () => {
  expect(localAsUtcMs('2026-02-30T10:00:00')).toBeNull();
  expect(localAsUtcMs('2026-02-28T10:00:00')).toBe(Date.UTC(2026, 1, 28, 10));
});
