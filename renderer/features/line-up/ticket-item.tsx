import { memo } from 'react';
import type { LessonNames } from '../../client/lesson-names.ts';
import { LINE_UP } from '../../text/english/line-up.ts';
import { getFlagGlyph } from '../../ui/flag-tag.tsx';
import { Glyph } from '../../ui/glyph.tsx';
import type { Ticket } from './loom.ts';
import { getTicketTime, nameTicket } from './ticket-words.ts';

/** A clip on the clock: letter, time, and a bar as tall as it is long. */
export const TicketItem = memo(function TicketItem({
  ticket,
  percent,
  share,
  names,
  isChosen,
  isReachable,
  onChoose,
}: {
  readonly ticket: Ticket;
  readonly percent: number;
  /** Its length as a share of the clock, 0 to 1. */
  readonly share: number;
  readonly names: LessonNames;
  readonly isChosen: boolean;
  readonly isReachable: boolean;
  readonly onChoose: (clip: string) => void;
}) {
  const { clip, look, flag, isGuess, isDoubtful } = ticket;
  const letter = clip.aside === 'clock-film' ? LINE_UP.clockFilm : (ticket.station ?? LINE_UP.unknownStation);
  return (
    <li className={`tk ${look} ${isDoubtful ? 'fuzzy' : ''}`} style={{ top: `${percent}%` }}>
      <button
        type="button"
        data-clip={clip.id}
        tabIndex={isReachable ? 0 : -1}
        aria-current={isChosen ? 'true' : undefined}
        aria-label={nameTicket(ticket, names)}
        onClick={() => onChoose(clip.id)}
      >
        <i className="len" style={{ '--share': share } as React.CSSProperties} />
        <b className={isGuess ? 'guess' : ''}>{letter}</b>{' '}
        <em>{getTicketTime(ticket, names) ?? LINE_UP.noTime}</em>
        {flag && <Glyph name={getFlagGlyph(flag)} />}
      </button>
    </li>
  );
});
