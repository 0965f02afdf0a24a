import { describe, expect, test } from 'vitest';
import { checkPlan } from '../../../src-core/lesson/check-plan.ts';
import { buildSmallPlan, type getRawPlan } from './small-plan.ts';

type Raw = ReturnType<typeof getRawPlan>;
const problemsAfter = (change: (raw: Raw) => void) => checkPlan(buildSmallPlan(change));
const [first, second] = [0, 1] as const;

describe('the check of a plan', () => {
  test('finds nothing in a sound plan', () => {
    expect(checkPlan(buildSmallPlan())).toEqual([]);
  });

  const cases: readonly [string, (raw: Raw) => void, object][] = [
    [
      'a zone nobody knows',
      (raw) => {
        raw.zone = 'America/Halifx';
      },
      { code: 'plan-zone-unknown', path: 'zone' },
    ],
    [
      'a station code used twice',
      (raw) =>
        raw.stations.push({ code: 'A', place: 'Slip', exercise: 'Plank taps', reps: 5, counting: 'side' }),
      { code: 'plan-code-twice', path: 'stations[2].code', value: 'A' },
    ],
    [
      'two squads whose tablets cannot be told apart',
      (raw) => {
        Object.assign(raw.squads[second] ?? {}, { tablet: 'Tablet 01' });
      },
      { code: 'plan-name-ambiguous', path: 'squads[0]', other: 'plum' },
    ],
    [
      'a route through a station that is not there',
      (raw) => {
        raw.squads[first]?.route.push('Z');
      },
      { code: 'plan-station-unknown', path: 'squads[0].route[2]', station: 'Z' },
    ],
    [
      'a route that comes back to a station',
      (raw) => {
        raw.squads[first]?.route.push('A');
      },
      { code: 'plan-station-repeated', path: 'squads[0].route[2]', station: 'A' },
    ],
    [
      'a start that is not the route’s first station',
      (raw) => {
        Object.assign(raw.squads[first] ?? {}, { startsAt: 'B' });
      },
      { code: 'plan-start-differs', path: 'squads[0].startsAt', start: 'B', first: 'A' },
    ],
    [
      'two squads at one station in one slot',
      (raw) => {
        Object.assign(raw.squads[second] ?? {}, { route: ['A', 'B'], startsAt: 'A' });
      },
      { code: 'plan-squads-meet', path: 'squads[1].route[0]', station: 'A', squads: ['teal', 'plum'] },
    ],
    [
      'a period that ends before it starts',
      (raw) => {
        Object.assign(raw.periods[first] ?? {}, { end: '08:30' });
      },
      { code: 'plan-period-reversed', path: 'periods[0]' },
    ],
    [
      'periods that overlap',
      (raw) => {
        Object.assign(raw.periods[second] ?? {}, { start: '09:30' });
      },
      { code: 'plan-periods-overlap', path: 'periods[1]', other: 'p1' },
    ],
    [
      'a lesson in a period that is not there',
      (raw) => {
        raw.lesson.period = 'p7';
      },
      { code: 'plan-period-unknown', path: 'lesson.period', period: 'p7' },
    ],
    [
      'a cycle range the wrong way round',
      (raw) => {
        Object.assign(raw.stations[first] ?? {}, { cycleSeconds: [4, 2] });
      },
      { code: 'plan-range-reversed', path: 'stations[0].cycleSeconds' },
    ],
    [
      'a scale that does not fall',
      (raw) => {
        raw.scale.reverse();
      },
      { code: 'plan-scale-order', path: 'scale[1].fromPercent' },
    ],
  ];
  test.each(cases)('names %s, with the place to mend', (_, change, expected) => {
    expect(problemsAfter(change)).toContainEqual(expect.objectContaining(expected));
  });
});
