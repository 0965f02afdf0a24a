import { useCallback, useMemo } from 'react';
import type { LessonView } from '../../../src-core/contract/lesson-view.ts';
import type { JournalAct } from '../../../src-core/marking/journal-event.ts';
import type { LessonNames } from '../../client/lesson-names.ts';
import { LINE_UP } from '../../text/english/line-up.ts';
import type { ClockAxis } from './clock-axis.ts';
import { ClockColumn } from './clock-column.tsx';
import type { LoomColumn } from './loom.ts';
import { LoomCard } from './loom-card.tsx';
import type { Meeting } from './meetings.ts';
import { buildMoveActs } from './move-acts.ts';
import { usePan } from './use-pan.ts';
import { type TicketDrop, useTicketDrag } from './use-ticket-drag.ts';
import type { Zoom } from './use-zoom.ts';

/** The loom by squad: one clock down the left, a lacing card for each squad. */
export function Loom({
  lesson,
  columns,
  meetings,
  axis,
  names,
  zoom,
  chosen,
  onChoose,
  onClock,
  onMove,
}: {
  readonly lesson: LessonView;
  readonly columns: readonly LoomColumn[];
  readonly meetings: readonly Meeting[];
  readonly axis: ClockAxis;
  readonly names: LessonNames;
  readonly zoom: Zoom;
  readonly chosen: string | null;
  readonly onChoose: (clip: string) => void;
  readonly onClock: (squad: string) => void;
  readonly onMove: (...acts: readonly JournalAct[]) => unknown;
}) {
  const { clips, squads } = lesson;
  const drop = useCallback(
    ({ clip: id, squad, slot }: TicketDrop) => {
      const clip = clips.find((each) => each.id === id);
      const acts = clip ? buildMoveActs(clip, squad, slot) : [];
      if (acts.length > 0) void onMove(...acts);
    },
    [clips, onMove],
  );
  usePan(zoom.loom);
  useTicketDrag(zoom.loom, drop);
  const clocks = useMemo(() => new Map(squads.map(({ code, clock }) => [code, clock])), [squads]);
  const first = columns.find(({ tickets }) => tickets.length > 0)?.tickets[0]?.clip.id ?? null;
  return (
    <section
      ref={zoom.loom}
      className={`loom ${columns.length > 6 ? 'many' : ''}`}
      aria-label={LINE_UP.loom}
      style={{ '--columns': columns.length, '--most': findMost(columns) } as React.CSSProperties}
    >
      <ClockColumn axis={axis} times={names.times} />
      {columns.map((column, at) => (
        <LoomCard
          key={column.squad}
          column={column}
          clock={clocks.get(column.squad) ?? null}
          meetings={meetings.filter(({ left }) => left.column === at)}
          names={names}
          axis={axis}
          gapPercent={zoom.gapPercent}
          reachable={chosen ?? first}
          chosen={column.tickets.some(({ clip }) => clip.id === chosen) ? chosen : null}
          onChoose={onChoose}
          onClock={onClock}
        />
      ))}
    </section>
  );
}

/** The clock is never shorter than the column with most tickets needs. */
function findMost(columns: readonly LoomColumn[]): number {
  return Math.max(1, ...columns.map(({ tickets }) => tickets.length));
}
