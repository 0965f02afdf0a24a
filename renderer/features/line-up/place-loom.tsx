import type { LessonNames } from '../../client/lesson-names.ts';
import { LINE_UP } from '../../text/english/line-up.ts';
import { Plate } from '../../ui/marks.tsx';
import { SquadMark } from '../../ui/squads.tsx';
import type { DueRow, PlaceColumn } from './by-place.ts';
import type { ClockAxis } from './clock-axis.ts';
import { ClockColumn } from './clock-column.tsx';
import { spread } from './spread.ts';
import { getTicketTime, namePlaceTicket } from './ticket-words.ts';
import { usePan } from './use-pan.ts';
import type { Zoom } from './use-zoom.ts';

/** The loom turned: a column for each station, who was due, who was there. */
export function PlaceLoom({
  places,
  axis,
  names,
  zoom,
  chosen,
  onChoose,
}: {
  readonly places: readonly PlaceColumn[];
  readonly axis: ClockAxis;
  readonly names: LessonNames;
  readonly zoom: Zoom;
  readonly chosen: string | null;
  readonly onChoose: (clip: string) => void;
}) {
  usePan(zoom.loom);
  return (
    <section
      ref={zoom.loom}
      className={`loom byplace ${places.length > 6 ? 'many' : ''}`}
      aria-label={LINE_UP.loom}
      style={
        {
          '--columns': places.length,
          '--most': Math.max(1, ...places.map(({ tickets }) => tickets.length)),
        } as React.CSSProperties
      }
    >
      <ClockColumn axis={axis} times={names.times} />
      {places.map((column) => (
        <PlaceCard
          key={column.station}
          {...{ column, names, chosen, onChoose }}
          gapPercent={zoom.gapPercent}
        />
      ))}
    </section>
  );
}

function PlaceCard({
  column,
  names,
  chosen,
  onChoose,
  gapPercent,
}: {
  readonly column: PlaceColumn;
  readonly names: LessonNames;
  readonly chosen: string | null;
  readonly onChoose: (clip: string) => void;
  readonly gapPercent: number;
}) {
  const { tickets, station, place, due } = column;
  const positions = spread(
    tickets.map(({ percent }) => percent),
    gapPercent,
  );
  return (
    <section className="card" aria-label={LINE_UP.place(names.station(station), tickets.length)}>
      <header>
        <Plate letter={station} />
        <b>{place}</b>
      </header>
      <div className="lace-high plain">
        <ol className="due" aria-label={LINE_UP.route}>
          {due.map((row) => (
            <Due key={row.slot} row={row} names={names} />
          ))}
        </ol>
        <ol aria-label={LINE_UP.clips}>
          {tickets.map((ticket, at) => (
            <li
              key={ticket.clip.id}
              className={`ptk ${ticket.look}`}
              style={{ top: `${positions[at] ?? 0}%` }}
            >
              <button
                type="button"
                aria-label={namePlaceTicket(ticket, names)}
                aria-current={ticket.clip.id === chosen ? 'true' : undefined}
                onClick={() => onChoose(ticket.clip.id)}
              >
                <SquadMark squad={ticket.squad} /> <em>{getTicketTime(ticket, names) ?? LINE_UP.noTime}</em>
              </button>
            </li>
          ))}
        </ol>
      </div>
    </section>
  );
}

function Due({ row, names }: { readonly row: DueRow; readonly names: LessonNames }) {
  // Who came when due stands there as a ticket already.
  const late = row.squads.filter(({ seen }) => seen !== 'then');
  return (
    <li style={{ top: `${row.topPercent}%`, height: `${row.heightPercent}%` }}>
      {late.map(({ squad, seen }) => (
        <span key={squad} className={seen === 'never' ? 'unseen' : ''}>
          {seen === 'never' ? LINE_UP.notSeen(names.squad(squad)) : LINE_UP.notThen(names.squad(squad))}
        </span>
      ))}
    </li>
  );
}
