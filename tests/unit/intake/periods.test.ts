import { describe, expect, test } from 'vitest';
import { findPeriod, splitByBreaks } from '../../../src-core/intake/periods.ts';

const at = (time: string) => Date.parse(`2025-05-15T${time}:00-03:00`);
const windows = [
  { code: 'p2', startMs: at('09:50'), endMs: at('10:35') },
  { code: 'p3', startMs: at('10:40'), endMs: at('11:25') },
];

describe('the period a clip belongs to', () => {
  test.each([
    ['10:00', 'p2'],
    ['10:40', 'p3'],
    ['11:25', 'p3'],
    ['11:29', 'p3'],
    ['11:31', null],
    ['10:36', 'p2'],
    ['10:39', 'p3'],
    ['09:44', null],
    ['09:46', 'p2'],
  ])('a clip begun at %s goes to %s', (time, period) => {
    expect(findPeriod(at(time), windows, 5 * 60)).toBe(period);
  });

  test('on a tie between two bells the earlier period has it, and without periods nobody', () => {
    const bells = [
      { code: 'a', startMs: 0, endMs: 1000 },
      { code: 'b', startMs: 3000, endMs: 4000 },
    ];
    expect(findPeriod(2000, bells, 60)).toBe('a');
    expect(findPeriod(2000, [], 60)).toBeNull();
  });
});

describe('a tablet whose clock fits no period', () => {
  test('is split where it lay unused', () => {
    const minutes = [0, 5, 10, 60, 65, 200].map((minute) => minute * 60_000);
    expect(splitByBreaks(minutes)).toEqual([
      { from: 0, to: 3 },
      { from: 3, to: 5 },
      { from: 5, to: 6 },
    ]);
    expect(splitByBreaks([])).toEqual([]);
  });
});
