import { findSlotSeconds } from '../../../src-core/lesson/lesson-timing.ts';
import type { Plan } from '../../../src-core/lesson/plan.ts';
import { countSlots } from './rotation.ts';

/** How long a slot is and when each begins. */
export interface SlotTimes {
  /** Whole seconds of a slot; null: no time is left, or nobody walks. */
  readonly seconds: number | null;
  /** Local time of each slot's begin, `10:46`; one a slot, or empty where there is no time. */
  readonly starts: readonly string[];
}

/** The work time of the lesson's period, in as many equal slots as the longest route has. */
export function getSlotTimes(plan: Plan): SlotTimes {
  const { lesson, periods, timing, squads } = plan;
  const period = periods.find(({ code }) => code === lesson.period);
  const seconds = findSlotSeconds(plan) ?? 0;
  if (!period || seconds <= 0) return { seconds: null, starts: [] };
  const begin = readMinutes(period.start) + timing.warmUpMinutes;
  return {
    seconds: Math.floor(seconds),
    starts: Array.from({ length: countSlots(squads) }, (_, slot) =>
      writeMinutes(begin + (seconds / 60) * slot),
    ),
  };
}

/** Minutes since midnight of a local time such as `10:40`. */
export function readMinutes(time: string): number {
  const [hours = 0, minutes = 0] = time.split(':').map(Number);
  return hours * 60 + minutes;
}

/** The local time so many minutes after midnight; the last of the day at most. */
export function writeMinutes(minutes: number): string {
  const inDay = Math.min(Math.floor(minutes), 23 * 60 + 59);
  return `${String(Math.floor(inDay / 60)).padStart(2, '0')}:${String(inDay % 60).padStart(2, '0')}`;
}
