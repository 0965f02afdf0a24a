import { memo } from 'react';
import type { SquadView } from '../../../src-core/contract/lesson-view.ts';
import type { LessonNames } from '../../client/lesson-names.ts';
import { BRING_IN } from '../../text/english/bring-in.ts';
import { LINE_UP } from '../../text/english/line-up.ts';
import { SquadMark } from '../../ui/squads.tsx';
import type { ClockAxis } from './clock-axis.ts';
import type { LoomColumn, LoomSlot } from './loom.ts';
import { Meetings } from './meeting-ties.tsx';
import type { Meeting } from './meetings.ts';
import { spread } from './spread.ts';
import { Threads } from './threads.tsx';
import { TicketItem } from './ticket-item.tsx';

/** A squad's lacing card: its route at the left, its clips on the clock at the right, threads between. */
export const LoomCard = memo(function LoomCard({
  column,
  clock,
  meetings,
  names,
  axis,
  gapPercent,
  chosen,
  reachable,
  onChoose,
  onClock,
}: {
  readonly column: LoomColumn;
  readonly clock: SquadView['clock'] | null;
  readonly meetings: readonly Meeting[];
  readonly names: LessonNames;
  readonly axis: ClockAxis;
  readonly gapPercent: number;
  readonly chosen: string | null;
  /** The one ticket that Tab reaches. */
  readonly reachable: string | null;
  readonly onChoose: (clip: string) => void;
  readonly onClock: (squad: string) => void;
}) {
  const { squad, slots, tickets, filled } = column;
  const places = spread(
    tickets.map(({ percent }) => percent),
    gapPercent,
  );
  return (
    <section
      className="card"
      data-squad={squad}
      aria-label={LINE_UP.column(names.squad(squad), filled, slots.length)}
    >
      <header>
        <SquadMark squad={squad} />
        <button type="button" className="lk" onClick={() => onClock(squad)}>
          {describeClock(clock)}
        </button>
      </header>
      <div className="lace lace-high">
        <ol className="slots" aria-label={LINE_UP.route}>
          {slots.map((slot) => (
            <RouteSlot key={slot.slot} slot={slot} />
          ))}
        </ol>
        <Threads slots={slots} tickets={tickets} places={places} />
        <ol className="tks" aria-label={LINE_UP.clips}>
          {tickets.map((ticket, at) => (
            <TicketItem
              key={ticket.clip.id}
              ticket={ticket}
              percent={places[at] ?? ticket.percent}
              share={(ticket.durationSeconds * 1000) / (axis.toMs - axis.fromMs)}
              names={names}
              isChosen={ticket.clip.id === chosen}
              isReachable={ticket.clip.id === reachable}
              onChoose={onChoose}
            />
          ))}
        </ol>
        <Meetings meetings={meetings} tickets={tickets} places={places} names={names} />
      </div>
    </section>
  );
});

function RouteSlot({ slot }: { readonly slot: LoomSlot }) {
  const { topPercent, heightPercent, look, station } = slot;
  const isGone = look !== 'quiet';
  return (
    <li
      className={`slot ${look}`}
      data-slot={slot.slot}
      style={{ top: `${topPercent}%`, height: `${heightPercent}%` }}
    >
      <span className="vh">
        {isGone ? LINE_UP.missingSlot(slot.slot, station) : LINE_UP.slot(slot.slot, station)}
      </span>
      <span className="sn" aria-hidden="true">
        {slot.slot + 1}
      </span>
      <span className={isGone ? 'hole' : 'plate open'} aria-hidden="true">
        {station}
      </span>
    </li>
  );
}

function describeClock(clock: SquadView['clock'] | null): string {
  if (!clock || clock.from === 'nothing') return BRING_IN.clockNotFilmed(clock?.uncertaintySeconds ?? 120);
  return clock.from === 'teacher'
    ? BRING_IN.clockByTeacher(clock.offsetSeconds)
    : BRING_IN.clock(clock.offsetSeconds);
}
