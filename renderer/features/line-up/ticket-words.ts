import type { ClipView } from '../../../src-core/contract/lesson-view.ts';
import type { LessonNames } from '../../client/lesson-names.ts';
import { LINE_UP, nameClipByTime, nameLineUpState } from '../../text/english/line-up.ts';
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
  if (flag === 'too-short' && clip.holds === 'still') return 'photo';
  return (flag && STATE_OF_FLAG[flag]) ?? 'in-order';
}

/** A ticket's time as shown; null: it has none. */
export function getTicketTime({ startMs }: Ticket, names: LessonNames): string | null {
  return startMs === null ? null : names.times.minute(startMs);
}

/** A clip in a question about it: `Amber’s clip of 10:57`. */
export function nameAskedClip(
  { squad, time, position }: Pick<ClipView, 'squad' | 'time' | 'position'>,
  names: LessonNames,
): string {
  const startMs = time?.startMs ?? null;
  return nameClipByTime(squad === null ? null : names.squad(squad), {
    time: startMs === null ? null : names.times.minute(startMs),
    position,
  });
}

/** A ticket's accessible name: `Plum, G 11:02, out of order`; begins with what is seen beside the squad. */
export function nameTicket(ticket: Ticket, names: LessonNames): string {
  const letter =
    ticket.clip.aside === 'clock-film' ? LINE_UP.clockFilm : (ticket.station ?? LINE_UP.unknownStation);
  const time = getTicketTime(ticket, names) ?? LINE_UP.noTime;
  return `${names.squad(ticket.squad)}, ${letter} ${time}, ${describeState(ticket)}`;
}

/** The same where the station heads the column: `Plum 11:02, station G, out of order`. */
export function namePlaceTicket(ticket: Ticket, names: LessonNames): string {
  const time = getTicketTime(ticket, names) ?? LINE_UP.noTime;
  const station = LINE_UP.ticketStation(ticket.station ?? LINE_UP.unknownStation);
  return `${names.squad(ticket.squad)} ${time}, ${station}, ${describeState(ticket)}`;
}

function describeState(ticket: Ticket): string {
  return nameLineUpState(getTicketState(ticket), ticket.look === 'kept');
}
