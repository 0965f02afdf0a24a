import type { PupilScore } from '../../../src-core/marking/points.ts';
import { change, PRESENCE_WORDS, SCORES } from '../../text/english/scores.ts';

/** What sets a pupil's mark apart from the squad's, in words; empty: nothing does. */
export function describePupil(score: PupilScore): readonly string[] {
  const { state, attendance, notes, override, slots } = score;
  if (state === 'absent' || state === 'excused') return [SCORES.noMark[state]];
  return [
    ...(attendance.attendance === 'late' ? [SCORES.late(attendance.arrived, slots)] : []),
    ...notes.map((note) => PRESENCE_WORDS[note]),
    ...(override ? [SCORES.byHand(change(override.change), override.reason)] : []),
  ];
}

/** A pupil's name as it is spoken. */
export function getPupilName({ pupil }: PupilScore): string {
  return [pupil.given, pupil.family].filter((part) => part !== '').join(' ') || pupil.id;
}
