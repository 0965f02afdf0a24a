import { describe, expect, test } from 'vitest';
import { count, exactSpan, list, span } from '../../../renderer/text/english/amounts.ts';
import { BRING_IN } from '../../../renderer/text/english/bring-in.ts';
import { CLASS_CLOCK } from '../../../renderer/text/english/class-clock.ts';
import { nameClock } from '../../../renderer/text/english/clock.ts';
import { namePeriod } from '../../../renderer/text/english/period.ts';
import { describePlanPlace } from '../../../renderer/text/english/plan-place.ts';
import { RULES } from '../../../renderer/text/english/plan-step.ts';
import { PLAN } from './walked-lesson.ts';

describe('amounts', () => {
  test('have their noun in one or many', () => {
    expect([count(0, 'clip'), count(1, 'clip'), count(2, 'clip')]).toEqual(['0 clips', '1 clip', '2 clips']);
    expect(count(2, 'copy', 'copies')).toBe('2 copies');
  });

  test('of time are told in the unit a teacher would use', () => {
    const spans: readonly [number, string][] = [
      [0, '0 s'],
      [3.66, '3.7 s'],
      [-89, '89 s'],
      [2220, '37 min'],
      [8100, '2 h 15 min'],
      [7200, '2 h'],
      [86_400 * 2, '2 days'],
      [Number.POSITIVE_INFINITY, 'an unknown time'],
    ];
    for (const [seconds, words] of spans) expect(span(seconds)).toBe(words);
  });

  test('of time are told to the second where a clock counts them down', () => {
    expect([40, 340, 340.9, 360].map(exactSpan)).toEqual(['40 s', '5 min 40 s', '5 min 40 s', '6 min']);
    expect(RULES.slotTime(6, 340)).toBe('6 slots of 5 min 40 s are left for work');
  });

  test('in a row are joined by commas and one and', () => {
    expect([list([]), list(['A']), list(['A', 'B']), list(['A', 'B', 'C'])]).toEqual([
      '',
      'A',
      'A and B',
      'A, B and C',
    ]);
  });
});

test.each([
  [3.7, 'clock 3.7 s slow'],
  [-3.7, 'clock 3.7 s fast'],
  [37 * 60, 'clock 37 min slow'],
  [-0.9, 'clock right'],
])('a tablet that needs %s s is said in words, not by a sign', (offsetSeconds, words) => {
  expect(nameClock(offsetSeconds)).toBe(words);
  expect([BRING_IN.clock(offsetSeconds), BRING_IN.clockByTeacher(offsetSeconds)]).toEqual([
    words,
    `${words}, by you`,
  ]);
});

test('a class that began hours or days off its bell is told by its start', () => {
  const minute = 60_000;
  expect(CLASS_CLOCK.shifted(4 * minute, '10:44')).toBe('4 min after its bell');
  expect(CLASS_CLOCK.shifted(-179 * minute, '07:41')).toBe('179 min before its bell');
  expect(CLASS_CLOCK.shifted(180 * minute, '13:40')).toBe('started at 13:40, not by the bell');
  expect(CLASS_CLOCK.shifted(810_622 * minute, '08:02')).toBe('started at 08:02, not by the bell');
});

test('a period is said one way on the screens, on paper and at the command line', () => {
  expect(['p3', 'P. 3', '3', 'Morning'].map(namePeriod)).toEqual([
    ...['period 3', 'period 3', 'period 3'],
    'Morning',
  ]);
  expect(describePlanPlace(PLAN, 'periods[0].start')).toMatch(/^Period 3, /);
});
