import type { LessonNames } from '../../client/lesson-names.ts';
import { LINE_UP } from '../../text/english/line-up.ts';
import { Glyph } from '../../ui/glyph.tsx';
import type { Ticket } from './loom.ts';
import type { Meeting } from './meetings.ts';

/** Dotted ties from a squad's tickets to those of squads that were at the same station at the same time. */
export function Meetings({
  meetings,
  tickets,
  places,
  names,
}: {
  readonly meetings: readonly Meeting[];
  readonly tickets: readonly Ticket[];
  readonly places: readonly number[];
  readonly names: LessonNames;
}) {
  return meetings.map(({ left, right, station }) => {
    const at = tickets.findIndex(({ clip }) => clip.id === left.ticket.clip.id);
    const words = LINE_UP.meeting(
      names.squad(left.ticket.squad),
      names.squad(right.ticket.squad),
      names.station(station),
      names.times.minute(left.ticket.startMs ?? 0),
    );
    const style = {
      top: `${places[at] ?? left.ticket.percent}%`,
      '--reach': right.column - left.column,
    } as React.CSSProperties;
    return (
      <div
        key={`${left.ticket.clip.id}-${right.ticket.clip.id}`}
        className="meet"
        style={style}
        title={words}
      >
        <span className="vh">{words}</span>
        <span className="clash">
          <Glyph name="clash" />
        </span>
      </div>
    );
  });
}
