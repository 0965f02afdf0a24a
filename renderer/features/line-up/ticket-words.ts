import type { LessonNames } from '../../client/lesson-names.ts';
import { nameLineUpState } from '../../text/english/line-up.ts';
import type { LineUpState } from '../../text/line-up-state.ts';
import type { Ticket } from './loom.ts';

const STATE_OF_FLAG: Readonly<Partial<Record<NonNullable<Ticket['flag']>, LineUpState>>> = {
  'out-of-order': 'out-of-order',
  extra: 'extra',
  retake: 'retake',
  'wrong-place': 'wrong-place',
  unplaced: 'unplaced',
  'too-short': 'too-short',
};

function getTicketState({ clip, flag }: Ticket): LineUpState {
  if (clip.aside === 'clock-film') return 'clock-film';
  if (clip.aside === 'other-squad') return 'waiting';
  if (clip.aside !== null) return 'set-aside';
  if (clip.assignment?.role === 'retake') return 'retake';
  return (flag && STATE_OF_FLAG[flag]) ?? 'in-order';
}

/** A ticket's time as shown; null: it has none. */
export function getTicketTime({ startMs }: Ticket, names: LessonNames): string | null {
  return startMs === null ? null : names.times.minute(startMs);
}

/** How a ticket stands, in words: the last part of its name, `Plum, G 11:02, out of order`. */
export function describeTicketState(ticket: Ticket): string {
  return nameLineUpState(getTicketState(ticket), ticket.look === 'kept');
}
