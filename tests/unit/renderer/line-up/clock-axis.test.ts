import { describe, expect, test } from 'vitest';
import { getZonedMs } from '../../../../renderer/client/zoned-ms.ts';
import { buildClockAxis, getPercent } from '../../../../renderer/features/line-up/clock-axis.ts';
import { buildClip, buildView, buildWalk, PERIOD_START_MS } from '../walked-lesson.ts';

const minute = (ms: number | undefined) => ((ms ?? Number.NaN) - PERIOD_START_MS) / 60_000;

describe('the clock of the loom', () => {
  test('divides the period evenly before any clip is there', () => {
    const axis = buildClockAxis(buildView([]));
    expect(axis.bounds.map(minute)).toEqual([0, 15, 30, 45]);
  });

  test('lies where the clips say once they are there', () => {
    const axis = buildClockAxis(buildView(buildWalk()));
    // Middles of clips of twenty seconds, ten minutes apart, and bounds halfway between.
    expect(axis.bounds.map((ms) => minute(ms) - 10 / 60)).toEqual([0, 10, 20, 30]);
  });

  test('gives a slot that nobody filmed the place between its neighbours', () => {
    const clips = buildWalk().filter(({ assignment }) => assignment?.slot !== 1);
    const axis = buildClockAxis(buildView(clips));
    expect(axis.bounds.map((ms) => minute(ms) - 10 / 60)).toEqual([0, 10, 20, 30]);
  });

  test('is not led by clips that are out of order', () => {
    const stray = buildClip('t4', { squad: 'teal', minute: 40, slot: 0, station: 'A' });
    const clips = [...buildWalk(), { ...stray, assignment: { ...stray.assignment, inOrder: false } }];
    const axis = buildClockAxis(buildView(clips as ReturnType<typeof buildWalk>));
    expect(minute(axis.bounds[0]) - 10 / 60).toBe(0);
    expect(minute(axis.toMs)).toBeGreaterThan(40);
  });

  test('shows every clip, and whole five minutes', () => {
    const axis = buildClockAxis(buildView(buildWalk()));
    expect(axis.ticks.map(minute)).toEqual([0, 5, 10, 15, 20, 25, 30]);
    expect(getPercent(axis, axis.fromMs)).toBe(0);
    expect(getPercent(axis, axis.toMs)).toBe(100);
  });
});

describe('local times of a school', () => {
  // Halifax goes to summer time on 9 March 2025 at 2:00 (tz database, Rule Canada).
  test.each([
    ['2025-05-15', '10:40', 'America/Halifax', '2025-05-15T13:40:00Z'],
    ['2025-01-15', '10:40', 'America/Halifax', '2025-01-15T14:40:00Z'],
    ['2025-03-09', '01:30', 'America/Halifax', '2025-03-09T05:30:00Z'],
    ['2025-03-09', '03:30', 'America/Halifax', '2025-03-09T06:30:00Z'],
    ['2025-05-15', '10:40', 'Asia/Kolkata', '2025-05-15T05:10:00Z'],
    ['2025-05-15', '10:40', 'no/zone', '2025-05-15T10:40:00Z'],
  ])('%s %s in %s is %s', (date, time, zone, expected) => {
    expect(getZonedMs(date, time, zone)).toBe(Date.parse(expected));
  });
});
