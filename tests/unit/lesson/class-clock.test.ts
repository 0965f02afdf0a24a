import { describe, expect, test } from 'vitest';
import { buildClockTarget, readClockTarget } from '../../../renderer/features/class-clock/clock-target.ts';
import { findClockJump, getClassMoment, getClassTimes } from '../../../src-core/lesson/class-clock.ts';
import { buildSmallPlan } from './small-plan.ts';

const MINUTE = 60_000;
const NINE = Date.parse('2025-05-15T12:00:00Z');
const BELL = { startMs: NINE, endMs: NINE + 45 * MINUTE };

/** Two slots in 45 minutes of which 6 are warm-up and 5 are clear-up: 17 minutes a slot. */
function at(minutes: number, shiftMinutes = 0) {
  const times = getClassTimes(buildSmallPlan(), BELL, shiftMinutes * MINUTE);
  const moment = getClassMoment(times, NINE + minutes * MINUTE);
  return { ...moment, remainingMinutes: moment.remainingMs / MINUTE };
}

describe('a class by the bell', () => {
  test.each([
    [-10, 'before', 10, 'warm-up'],
    [0, 'warm-up', 6, 'slot'],
    [5, 'warm-up', 1, 'slot'],
    [40, 'clear-up', 5, 'after'],
    [44.5, 'clear-up', 0.5, 'after'],
    [45, 'after', 0, undefined],
    [600, 'after', 0, undefined],
  ])('%d minutes after its bell is at %s, with %d left, and then %s', (minutes, kind, left, next) => {
    const moment = at(minutes);
    expect([moment.part.kind, moment.remainingMinutes, moment.next?.kind]).toEqual([kind, left, next]);
  });

  test.each([
    [6, 0, 17],
    [22.999, 0, 0.001],
    [23, 1, 17],
    [39, 1, 1],
  ])('%d minutes after its bell is in slot %d, with %d minutes left of it', (minutes, slot, left) => {
    const { part, remainingMinutes, remainingShare } = at(minutes);
    expect(part).toEqual({ kind: 'slot', slot });
    expect(remainingMinutes).toBeCloseTo(left, 6);
    expect(remainingShare).toBeCloseTo(left / 17, 6);
  });

  test('goes on from each part to the next without a gap, and the share that remains only falls within one', () => {
    let before = at(-1);
    for (let minutes = -1; minutes < 46; minutes += 0.05) {
      const now = at(minutes);
      if (JSON.stringify(now.part) === JSON.stringify(before.part)) {
        expect(now.remainingMs).toBeLessThanOrEqual(before.remainingMs);
        expect(now.remainingShare).toBeLessThanOrEqual(before.remainingShare);
      } else expect(now.part).toEqual(before.next);
      before = now;
    }
    expect(before.part.kind).toBe('after');
  });
});

describe('a class that began off its bell', () => {
  test('ends with the bell all the same: its slots are shorter', () => {
    expect(at(8, 4)).toMatchObject({ part: { kind: 'warm-up' }, remainingMinutes: 2 });
    expect(at(10, 4)).toMatchObject({ part: { kind: 'slot', slot: 0 }, remainingMinutes: 15 });
    expect(at(40, 4).part.kind).toBe('clear-up');
    expect(at(45, 4).part.kind).toBe('after');
  });

  test('has longer slots where it began early', () => {
    expect(at(4, -2)).toMatchObject({ part: { kind: 'slot', slot: 0 }, remainingMinutes: 18 });
  });

  test('has no work left where it began too late for any, and still says so in order', () => {
    expect(at(44.5, 44)).toMatchObject({ part: { kind: 'warm-up' }, remainingMinutes: 0.5 });
    expect(at(36, 35)).toMatchObject({
      part: { kind: 'warm-up' },
      next: { kind: 'clear-up' },
      remainingMinutes: 5,
    });
    expect(at(42, 35)).toMatchObject({ part: { kind: 'clear-up' }, remainingMinutes: 3 });
  });

  test('on another day has its whole length', () => {
    const day = 24 * 60;
    expect(at(day + 3, day)).toMatchObject({ part: { kind: 'warm-up' }, remainingMinutes: 3 });
    expect(at(day + 44, day)).toMatchObject({ part: { kind: 'clear-up' }, remainingMinutes: 1 });
  });
});

describe('the two clocks of a machine', () => {
  const before = { wallMs: NINE, steadyMs: 500 };

  test('that agree to within a late timer are no jump', () => {
    expect(findClockJump(before, { wallMs: NINE + 61_000, steadyMs: 60_000 })).toBe(null);
    expect(findClockJump(before, { wallMs: NINE + 3_600_000, steadyMs: 3_600_500 })).toBe(null);
  });

  test('tell by how much the wall clock was set, or slept through', () => {
    expect(findClockJump(before, { wallMs: NINE + 38_000, steadyMs: 1_500 })).toBe(37_000);
    expect(findClockJump(before, { wallMs: NINE - 59_000, steadyMs: 1_500 })).toBe(-60_000);
  });
});

test.each([
  [0, 'class-clock'],
  [300_000, 'class-clock+300'],
  [-61_000, 'class-clock-61'],
])('a shift of %d ms stands in the address as %s', (shiftMs, target) => {
  expect(buildClockTarget(shiftMs)).toBe(target);
  expect(readClockTarget(target)).toBe(shiftMs);
});

test.each(['class-clocks', 'class-clock+', 'class-clock+1.5', 'clip-1', '', null])(
  '%s opens no class clock',
  (target) => {
    expect(readClockTarget(target)).toBe(null);
  },
);
