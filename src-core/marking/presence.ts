import { Temporal } from 'temporal-polyfill';
import type { Plan, SlotIndex, SquadCode } from '../lesson/plan.ts';
import type { Pupil } from '../lesson/roster.ts';
import type { EpochMs } from '../platform/units.ts';
import type { AttendanceWord, Decisions } from './decisions.ts';
import type { SlotResult } from './score-input.ts';

/** Why a late pupil is marked on the whole route all the same. */
export type PresenceNote = 'late-without-arrival' | 'late-without-times';

/** The slots that count for a pupil. */
export interface Presence {
  readonly slots: ReadonlySet<SlotIndex>;
  readonly notes: readonly PresenceNote[];
}

/** A pupil's attendance: the teacher's word where there is one, else the roster's. */
export function getAttendance(pupil: Pupil, word: AttendanceWord | undefined): AttendanceWord {
  const { attendance, arrived } = word ?? pupil;
  return { attendance, arrived: attendance === 'late' ? arrived : null };
}

/** Pupils of a squad who were there all along; one who came late may be missing from any clip. */
export function countPresent(
  squad: SquadCode,
  pupils: readonly Pupil[],
  { attendance }: Pick<Decisions, 'attendance'>,
): number {
  const isThere = (pupil: Pupil) => getAttendance(pupil, attendance.get(pupil.id)).attendance === 'present';
  return pupils.filter((pupil) => pupil.squad === squad && isThere(pupil)).length;
}

/**
 * The slots that a pupil was there for. Late pupils: those whose counting clip started in the minute of arrival or
 * later. A slot without a timed clip goes by its place in the route: it counts where the nearest earlier slot
 * with a time does, so a gap around the arrival is left out, in the pupil's favour. Everybody else, and late
 * pupils where the arrival or every clip's time is unknown, are marked on the whole route.
 */
export function getPresence(plan: Plan, slots: readonly SlotResult[], word: AttendanceWord): Presence {
  const all = new Set(slots.map(({ slot }) => slot));
  if (word.attendance !== 'late') return { slots: all, notes: [] };
  if (word.arrived === null) return { slots: all, notes: ['late-without-arrival'] };
  if (slots.every(({ startMs }) => startMs === null)) return { slots: all, notes: ['late-without-times'] };
  const arrivedMs = readLocalTime(plan, word.arrived);
  let isThere = false;
  const present = [...slots]
    .sort((a, b) => a.slot - b.slot)
    .filter(({ startMs }) => {
      if (startMs !== null) isThere = startMs >= arrivedMs;
      return isThere;
    });
  return { slots: new Set(present.map(({ slot }) => slot)), notes: [] };
}

/** A local time that comes twice, when clocks go back, is taken as the first. */
function readLocalTime(plan: Plan, local: string): EpochMs {
  return Temporal.PlainDate.from(plan.lesson.date).toZonedDateTime({
    timeZone: plan.zone,
    plainTime: Temporal.PlainTime.from(local),
  }).epochMilliseconds;
}
