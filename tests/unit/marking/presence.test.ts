import { describe, expect, test } from 'vitest';
import { countPresent, getAttendance, getPresence } from '../../../src-core/marking/presence.ts';
import type { SlotResult } from '../../../src-core/marking/score-input.ts';
import { buildHarbourPlan, buildPupil, PLUM_SLOTS } from './harbour.ts';

const plan = buildHarbourPlan();
const at = (arrived: string | null) => ({ attendance: 'late' as const, arrived });
const counting = (slots: readonly SlotResult[], arrived: string | null) => [
  ...getPresence(plan, slots, at(arrived)).slots,
];

function without(...missing: readonly number[]): readonly SlotResult[] {
  return PLUM_SLOTS.map((slot) =>
    missing.includes(slot.slot) ? { ...slot, clip: null, startMs: null, position: null } : slot,
  );
}

describe('the slots that count for a late pupil', () => {
  test('are those filmed from the minute of arrival on', () => {
    expect(counting(PLUM_SLOTS, '10:58')).toEqual([2, 3, 4, 5, 6]);
    expect(counting(PLUM_SLOTS, '10:59')).toEqual([3, 4, 5, 6]);
  });

  test('follow the time a clip was filmed, not its place in the route', () => {
    // F, slot 4 of the route, was filmed at 11:07 and G, slot 5, at 11:02.
    expect(counting(PLUM_SLOTS, '11:05')).toEqual([3, 5, 6]);
  });

  test('hold a missing clip when the slot before it already counts', () => {
    expect(counting(without(5), '10:55')).toEqual([2, 3, 4, 5, 6]);
  });

  test('leave out a missing clip that may have been due before the arrival', () => {
    expect(counting(without(2), '10:55')).toEqual([3, 4, 5, 6]);
    expect(counting(without(0), '10:40')).toEqual([1, 2, 3, 4, 5, 6]);
  });

  test('are none for a pupil who came after the last clip', () => {
    expect(counting(PLUM_SLOTS, '11:29')).toEqual([]);
  });

  test('are all where nobody noted the arrival, and that is said', () => {
    const presence = getPresence(plan, PLUM_SLOTS, at(null));
    expect([presence.slots.size, presence.notes]).toEqual([7, ['late-without-arrival']]);
  });

  test('are all where no clip has a time, and that is said', () => {
    const slots = PLUM_SLOTS.map((slot) => ({ ...slot, startMs: null }));
    const presence = getPresence(plan, slots, at('10:55'));
    expect([presence.slots.size, presence.notes]).toEqual([7, ['late-without-times']]);
  });

  test('go by the school’s zone', () => {
    const elsewhere = { ...plan, zone: 'Europe/Berlin' };
    // 15:58 in Berlin is 10:58 in Halifax on that day.
    expect([...getPresence(elsewhere, PLUM_SLOTS, at('15:58')).slots]).toEqual([2, 3, 4, 5, 6]);
  });
});

describe('attendance', () => {
  test('is the roster’s until the teacher says otherwise', () => {
    const pupil = buildPupil('k-1', { attendance: 'late', arrived: '10:55' });
    expect(getAttendance(pupil, undefined)).toEqual({ attendance: 'late', arrived: '10:55' });
    expect(getAttendance(pupil, { attendance: 'absent', arrived: null })).toEqual({
      attendance: 'absent',
      arrived: null,
    });
  });

  test('a time of arrival means nothing but for late pupils', () => {
    const pupil = buildPupil('k-1', { attendance: 'present', arrived: '10:55' });
    expect(getAttendance(pupil, undefined).arrived).toBeNull();
  });

  test('counts those of a squad who were there all along, by the teacher’s word before the roster’s', () => {
    const pupils = [
      buildPupil('k-1'),
      buildPupil('k-2', { attendance: 'absent' }),
      buildPupil('k-3', { attendance: 'late', arrived: '10:55' }),
      buildPupil('k-4', { attendance: 'excused' }),
      buildPupil('k-5', { squad: 'teal' }),
      buildPupil('k-6'),
    ];
    const words = new Map([['k-6', { attendance: 'absent' as const, arrived: null }]]);
    expect(countPresent('plum', pupils, { attendance: new Map() })).toBe(2);
    expect(countPresent('plum', pupils, { attendance: words })).toBe(1);
  });
});
