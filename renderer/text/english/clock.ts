import { span } from './amounts.ts';

/** A tablet's clock by what is to be added to it: `clock 3.7 s fast`, `clock 37 min slow`; `clock right` below a second. */
export function nameClock(offsetSeconds: number): string {
  if (Math.abs(offsetSeconds) < 1) return 'clock right';
  return `clock ${span(offsetSeconds)} ${offsetSeconds > 0 ? 'slow' : 'fast'}`;
}

/** Words of the slip that sets a tablet’s clock. */
export const CLOCK = {
  title: (squad: string) => `${squad}’s tablet clock`,
  now: (words: string) => `Now: ${words}.`,
  fromTeacher: 'set by you',
  fromFilm: 'read from its film of the class clock',
  fromNothing: 'never checked against the class clock',
  label: 'Add to what the tablet shows',
  hint: 'Seconds, or minutes and seconds: +31, −0:45, 1:02:00. A slow tablet needs +.',
  shift: (amount: string) => `${amount} would fit the period`,
  set: 'Set the clock',
  asFound: 'As found',
  wrong: 'Not a length of time. Write it as +31 or −0:45.',
} as const;
