import type { LessonView } from '../../../src-core/contract/lesson-view.ts';
import type { SquadCode, StationCode } from '../../../src-core/lesson/plan.ts';
import { type ClockAxis, getPercent } from './clock-axis.ts';
import type { LoomColumn, Ticket } from './loom.ts';

/** Who is due at a station in a slot. */
export interface DueRow {
  readonly slot: number;
  readonly topPercent: number;
  readonly heightPercent: number;
  readonly squads: readonly DueSquad[];
}

/** A squad that was due, and whether it came: in that slot, at another time, or never. */
export interface DueSquad {
  readonly squad: SquadCode;
  readonly seen: 'then' | 'else' | 'never';
}

/** A station's column: who was due when, and who was there. */
export interface PlaceColumn {
  readonly station: StationCode;
  readonly place: string;
  readonly due: readonly DueRow[];
  readonly tickets: readonly Ticket[];
}

/** The loom turned: a column for each station. Clips whose station nobody knows stand in none. */
export function buildPlaces(
  { plan }: Pick<LessonView, 'plan'>,
  columns: readonly LoomColumn[],
  axis: ClockAxis,
): readonly PlaceColumn[] {
  const tickets = columns.flatMap((column) => column.tickets).filter(({ clip }) => clip.aside === null);
  const slots = axis.bounds.length - 1;
  return plan.stations.map(({ code, place }) => {
    const here = tickets.filter(({ station }) => station === code);
    const due = Array.from({ length: slots }, (_, slot): DueRow => {
      const top = getPercent(axis, axis.bounds[slot] ?? axis.fromMs);
      const bottom = getPercent(axis, axis.bounds[slot + 1] ?? axis.toMs);
      return {
        slot,
        topPercent: top,
        heightPercent: bottom - top,
        squads: plan.squads
          .filter(({ route }) => route[slot] === code)
          .map(({ code: squad }) => ({ squad, seen: findSeen(here, squad, top, bottom) })),
      };
    });
    return { station: code, place, due, tickets: here.toSorted((one, other) => one.percent - other.percent) };
  });
}

function findSeen(here: readonly Ticket[], squad: SquadCode, top: number, bottom: number): DueSquad['seen'] {
  const own = here.filter((ticket) => ticket.squad === squad);
  if (own.length === 0) return 'never';
  return own.some(({ percent }) => percent >= top && percent < bottom) ? 'then' : 'else';
}
