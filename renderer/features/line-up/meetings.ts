import type { StationCode } from '../../../src-core/lesson/plan.ts';
import type { LoomColumn, Ticket } from './loom.ts';

/** Two squads at one station at one time. */
export interface Meeting {
  readonly station: StationCode;
  /** Columns from left to right, counted from 0. */
  readonly left: { readonly column: number; readonly ticket: Ticket };
  readonly right: { readonly column: number; readonly ticket: Ticket };
}

/** Squads that follow one another at a station need at least this long in between. */
const TURN_SECONDS = 20;

/** Every pair of squads that filmed at one station at about the same time; clips of doubtful time are left out. */
export function findMeetings(columns: readonly LoomColumn[]): readonly Meeting[] {
  const sure = columns.flatMap(({ tickets }, column) =>
    tickets
      .filter(({ look, isDoubtful, startMs, station }) => look !== 'off' && !isDoubtful && startMs && station)
      .map((ticket) => ({ column, ticket })),
  );
  return sure.flatMap((left, at) =>
    sure
      .slice(at + 1)
      .filter((right) => right.column > left.column && areTogether(left.ticket, right.ticket))
      .map((right): Meeting => ({ station: left.ticket.station ?? '', left, right })),
  );
}

function areTogether(one: Ticket, other: Ticket): boolean {
  if (one.station !== other.station || one.startMs === null || other.startMs === null) return false;
  const [first, second] = one.startMs <= other.startMs ? [one, other] : [other, one];
  const endMs = (first.startMs ?? 0) + (first.durationSeconds + TURN_SECONDS) * 1000;
  return (second.startMs ?? 0) < endMs;
}
