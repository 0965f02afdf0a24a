import { describe, expect, test } from 'vitest';
import { getPeriodWindows } from '../../../src-core/intake/period-windows.ts';
import { buildSmallPlan } from '../lesson/small-plan.ts';

/** The windows of one period on one day, as instants in UTC. */
const windows = (date: string, start: string, end: string, zone = 'America/Halifax') => {
  const plan = buildSmallPlan((raw) => {
    raw.lesson.date = date;
    raw.zone = zone;
    raw.periods = [{ code: 'p1', start, end }];
  });
  return getPeriodWindows(plan).map(({ startMs, endMs }) =>
    [startMs, endMs].map((ms) => new Date(ms).toISOString()),
  );
};

// Atlantic time: UTC−3 in summer, UTC−4 in winter; 2025: forward on 9 March, back on 2 November (IANA time zone database).
describe('the periods of a day as instants', () => {
  test('follow daylight saving', () => {
    expect(windows('2025-05-15', '09:00', '09:45')).toEqual([
      ['2025-05-15T12:00:00.000Z', '2025-05-15T12:45:00.000Z'],
    ]);
    expect(windows('2025-01-15', '09:00', '09:45')).toEqual([
      ['2025-01-15T13:00:00.000Z', '2025-01-15T13:45:00.000Z'],
    ]);
  });

  test('hold both hours where the clocks go back over a bell', () => {
    expect(windows('2025-11-02', '01:15', '01:45')).toEqual([
      ['2025-11-02T04:15:00.000Z', '2025-11-02T05:45:00.000Z'],
    ]);
  });

  test('leave out a period whose bell no clock shows', () => {
    expect(windows('2025-03-09', '02:15', '03:15')).toEqual([]);
    expect(windows('2025-03-09', '01:15', '03:15')).toHaveLength(1);
  });

  test('are none in a zone that is none', () => {
    expect(windows('2025-05-15', '09:00', '09:45', 'Atlantic/Atlantis')).toEqual([]);
  });
});
