import type { Plan, SquadCode } from '../plan.ts';
import { chooseSquad } from './choose-squad.ts';
import type { ListedPupil } from './class-list.ts';
import { buildRosterText, parseRosterTable, type RosterTable, withColumn } from './roster-table.ts';

/** What a class list would change in a roster. */
export interface RosterMerge {
  /** New in the class, each with the squad that is suggested. */
  readonly added: readonly (ListedPupil & { readonly squad: SquadCode })[];
  /** In the class as before, under another name. */
  readonly changed: readonly { readonly was: ListedPupil; readonly now: ListedPupil }[];
  /** No longer on the list. */
  readonly left: readonly ListedPupil[];
  /** Marked as having left before, and on the list again. */
  readonly back: readonly ListedPupil[];
  /** How many stay as they are. */
  readonly unchanged: number;
}

/** What becomes of pupils who left since: kept in roster.csv with `yes` under `left`, or taken out of it. */
export type LeftChoice = 'keep' | 'remove';

/** A roster and a class list side by side. */
export interface MergeOrder {
  /** roster.csv as it is; null where there is none. */
  readonly roster: string | null;
  readonly list: readonly ListedPupil[];
  readonly plan: Pick<Plan, 'squads' | 'grouping'>;
  readonly left: LeftChoice;
}

/**
 * Merges a class list into a roster by id. Squad, attendance, the do-not-film word and every column of the teacher's
 * own stay with their pupil, also with one who left and is kept; new pupils join the smallest squad that the
 * teacher's rules allow. The value is roster.csv's new text, and what is different about it.
 */
export function mergeRoster({ roster, list, plan, left }: MergeOrder): {
  readonly text: string;
  readonly merge: RosterMerge;
} {
  const table = parseRosterTable(roster);
  const listed = new Map(list.map((pupil) => [pupil.id, pupil]));
  const present = new Set(table.rows.map(getId));
  const gone = table.rows.filter((row) => !listed.has(getId(row)) && !hasLeft(row));
  const stays = table.rows.filter((row) => listed.has(getId(row)));
  const back = stays.filter(hasLeft);
  const changed = stays.flatMap((row) => {
    const [was, now] = [readListed(row), listed.get(getId(row))];
    return now && (was.given !== now.given || was.family !== now.family) ? [{ was, now }] : [];
  });
  const touched = new Set([...back.map(getId), ...changed.map(({ was }) => was.id)]);
  const added = addPupils(
    list.filter(({ id }) => !present.has(id)),
    stays,
    plan,
  );
  const merge: RosterMerge = {
    added,
    changed,
    left: gone.map(readListed),
    back: back.map(readListed),
    unchanged: stays.filter((row) => !touched.has(getId(row))).length,
  };
  return { text: buildRosterText(buildTable(table, { listed, added, left })), merge };
}

type Row = RosterTable['rows'][number];

function getId(row: Row): string {
  return (row.id ?? '').trim();
}

function hasLeft(row: Row): boolean {
  return (row.left ?? '').trim().toLowerCase() === 'yes';
}

function readListed(row: Row): ListedPupil {
  return { id: getId(row), given: (row.given ?? '').trim(), family: (row.family ?? '').trim() };
}

function addPupils(
  news: readonly ListedPupil[],
  stays: readonly Row[],
  plan: MergeOrder['plan'],
): RosterMerge['added'] {
  const squadOf = new Map(stays.map((row) => [getId(row), row.squad ?? '']));
  return news.map((pupil) => {
    const squad = chooseSquad(pupil.id, squadOf, plan);
    squadOf.set(pupil.id, squad);
    return { ...pupil, squad };
  });
}

interface TableParts {
  readonly listed: ReadonlyMap<string, ListedPupil>;
  readonly added: RosterMerge['added'];
  readonly left: LeftChoice;
}

function buildTable(table: RosterTable, { listed, added, left }: TableParts): RosterTable {
  // Who left earlier is in no preview, so nobody has said that their lines may go.
  const kept = table.rows.filter((row) => left === 'keep' || listed.has(getId(row)) || hasLeft(row));
  const marksLeft = kept.some((row) => !listed.has(getId(row)));
  const { heads } = marksLeft ? withColumn(table, 'left') : table;
  const rows = kept.map((row): Row => {
    const now = listed.get(getId(row));
    return now ? { ...row, given: now.given, family: now.family, left: '' } : { ...row, left: 'yes' };
  });
  return { heads, rows: [...rows, ...added.map((pupil): Row => ({ ...pupil }))] };
}

/** roster.csv with other squads for some pupils; those it does not name stay as they are. */
export function withSquads(
  roster: string | null,
  assignment: readonly { readonly pupil: string; readonly squad: SquadCode }[],
): string {
  const squadOf = new Map(assignment.map(({ pupil, squad }) => [pupil, squad]));
  const table = parseRosterTable(roster);
  return buildRosterText({
    heads: table.heads,
    rows: table.rows.map((row) => {
      const squad = squadOf.get(getId(row));
      return squad === undefined ? row : { ...row, squad };
    }),
  });
}

/** roster.csv for another day: everybody present, and all else as it is, the do-not-film word too. */
export function withoutAttendance(roster: string): string {
  const { heads, rows } = parseRosterTable(roster);
  return buildRosterText({ heads, rows: rows.map((row) => ({ ...row, attendance: '', arrived: '' })) });
}
