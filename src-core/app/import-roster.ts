import type { RosterSource } from '../contract/planning-calls.ts';
import type { RosterProblem } from '../lesson/lesson-problem.ts';
import type { Plan } from '../lesson/plan.ts';
import type { ColumnChoice, ListedPupil } from '../lesson/roster/class-list.ts';
import { hasLostLetters } from '../lesson/roster/lost-letters.ts';
import { type LeftChoice, mergeRoster, type RosterMerge } from '../lesson/roster/merge-roster.ts';
import { parseClassCsv } from '../lesson/roster/parse-class-csv.ts';
import { type OneRosterFiles, type OneRosterSet, readOneRoster } from '../lesson/roster/read-oneroster.ts';
import type { RosterImportProblem } from '../lesson/roster/roster-import-problem.ts';
import { parseRosterTable } from '../lesson/roster/roster-table.ts';

export { withoutAttendance, withSquads } from '../lesson/roster/merge-roster.ts';
export { withPupilWords } from '../lesson/roster/pupil-words.ts';
export { ONEROSTER_FILES } from '../lesson/roster/read-oneroster.ts';

/** A class list as handed over, its text read: one CSV, or the files of a OneRoster export. */
export type ClassListFiles =
  | { readonly kind: 'csv'; readonly name: string; readonly text: string }
  | { readonly kind: 'oneroster'; readonly files: OneRosterFiles };

/** How a class list is to be read and merged. */
export interface ImportOrder {
  readonly plan: Plan;
  /** roster.csv as it is; null where there is none. */
  readonly roster: string | null;
  readonly columns: ColumnChoice | null;
  readonly classId: string | null;
  readonly left: LeftChoice;
}

/** What a class list is, and what it would change. */
export interface RosterDraft {
  readonly source: RosterSource | null;
  readonly merge: RosterMerge | null;
  /** roster.csv's new text; null where there is nothing to merge. */
  readonly text: string | null;
  readonly problems: readonly (RosterImportProblem | RosterProblem)[];
}

/** Reads a class list and holds it against the roster; nothing is written. */
export function draftRoster(list: ClassListFiles, order: ImportOrder): RosterDraft {
  const read = list.kind === 'csv' ? readCsv(list, order) : readSet(list.files, order);
  if (read.pupils.length === 0) return { ...read, merge: null, text: null };
  const { roster, plan, left } = order;
  const slips = checkRosterText(roster);
  if (slips.length > 0) return { ...read, merge: null, text: null, problems: [...read.problems, ...slips] };
  return { ...read, ...mergeRoster({ roster, list: read.pupils, plan, left }) };
}

/**
 * Why a roster must not be written over: letters were lost in reading it, and would be lost on the disk too, or its
 * columns cannot be told. Empty: it may be.
 */
export function checkRosterText(roster: string | null): readonly RosterProblem[] {
  if (roster === null) return [];
  if (hasLostLetters(roster)) {
    const line = roster.split('\n').findIndex(hasLostLetters) + 1;
    return [{ code: 'roster-not-utf8', line }];
  }
  const heads = parseRosterTable(roster).heads.map((head) => head.toLowerCase());
  return ['id', 'given', 'family', 'squad']
    .filter((column) => !heads.includes(column))
    .map((column) => ({ code: 'roster-column-missing', column }));
}

interface ReadList {
  readonly source: RosterSource | null;
  readonly pupils: readonly ListedPupil[];
  readonly problems: readonly RosterImportProblem[];
}

function readCsv(list: Extract<ClassListFiles, { kind: 'csv' }>, order: ImportOrder): ReadList {
  const { heads, columns, pupils, problems } = parseClassCsv(list.text, list.name, order.columns);
  return { source: { kind: 'csv', heads, columns }, pupils, problems };
}

function readSet(files: OneRosterFiles, { plan, classId: wanted }: ImportOrder): ReadList {
  const set = readOneRoster(files, plan.lesson.date);
  if (!set.ok) return { source: null, pupils: [], problems: set.problems };
  const { version, classes } = set.value;
  const only = classes.length === 1 ? (classes[0]?.id ?? null) : null;
  const classId = wanted ?? only;
  const source = { kind: 'oneroster', version, classes, classId } as const;
  return { source, ...takeClass(set.value, classId) };
}

function takeClass({ classes, pupilsOf }: OneRosterSet, classId: string | null): Omit<ReadList, 'source'> {
  if (classId === null) {
    return { pupils: [], problems: [{ code: 'import-class-open', classes: classes.length }] };
  }
  const found = pupilsOf.get(classId);
  if (!found) return { pupils: [], problems: [{ code: 'import-class-unknown', classId }] };
  const missing = found.missing.map((id): RosterImportProblem => ({ code: 'import-user-missing', id }));
  return found.pupils.length === 0
    ? { pupils: [], problems: [{ code: 'import-empty' }, ...missing] }
    : { pupils: found.pupils, problems: missing };
}
