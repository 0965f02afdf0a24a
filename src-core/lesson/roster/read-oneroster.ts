import papa from 'papaparse';
import { fail, type Outcome, succeed } from '../../platform/outcome.ts';
import type { ListedPupil } from './class-list.ts';
import { hasLostLetters } from './lost-letters.ts';
import type { RosterImportProblem } from './roster-import-problem.ts';

/** The files of a OneRoster export, by name (`users.csv`); those that are not there are left out. */
export type OneRosterFiles = ReadonlyMap<string, string>;

/** A class of an export. */
export interface OneRosterClass {
  readonly id: string;
  readonly title: string;
  /** Pupils enrolled on the day asked for. */
  readonly pupils: number;
}

/** What of an export matters to a roster. */
export interface OneRosterSet {
  readonly version: '1.1' | '1.2';
  /** By title. */
  readonly classes: readonly OneRosterClass[];
  /** The pupils of each class, by its id, with notices about them. */
  readonly pupilsOf: ReadonlyMap<
    string,
    { readonly pupils: readonly ListedPupil[]; readonly missing: readonly string[] }
  >;
}

/** Files that a roster is read from; the rest is left alone, 1.2's roles.csv too: who learns in a class its enrolments say. */
export const ONEROSTER_FILES = ['manifest.csv', 'classes.csv', 'enrollments.csv', 'users.csv'];

/** Columns that are read of each file; names are case-sensitive, and their order does not matter here. */
const NEEDED: Readonly<Record<string, readonly string[]>> = {
  'manifest.csv': ['propertyName', 'value'],
  'classes.csv': ['sourcedId', 'title'],
  'enrollments.csv': ['classSourcedId', 'userSourcedId', 'role'],
  'users.csv': ['sourcedId', 'givenName', 'familyName'],
};

type Row = Readonly<Record<string, string>>;

/**
 * Reads classes and their pupils from a OneRoster export of version 1.1 or 1.2 (1EdTech OneRoster CSV Binding: 1.1
 * "Final CSV Tables", 1.2 section 3 and the tables of classes, enrollments and users). Either variant of 1.2's
 * users.csv is taken, for columns go by name. Pupils are those enrolled as `student` on `day` (`2025-05-15`); an
 * enrolment's end is exclusive. Rows marked `tobedeleted` count as gone. Preferred names go before legal ones.
 */
export function readOneRoster(
  files: OneRosterFiles,
  day: string,
): Outcome<OneRosterSet, RosterImportProblem> {
  const slips = findSlips(files);
  if (slips.length > 0) return fail(...slips);
  const rowsOf = (name: string) => readRows(files.get(name) ?? '').rows.filter(isThere);
  const manifest = new Map(rowsOf('manifest.csv').map((row) => [row.propertyName, row.value]));
  const version = manifest.get('oneroster.version')?.trim() ?? '';
  if (version !== '1.1' && version !== '1.2') return fail({ code: 'import-version-unknown', version });
  const users = new Map(rowsOf('users.csv').map((row) => [row.sourcedId ?? '', row]));
  const enrolments = rowsOf('enrollments.csv').filter((row) => row.role === 'student' && isOn(row, day));
  const classes = rowsOf('classes.csv').map((row) => ({ id: row.sourcedId ?? '', title: row.title ?? '' }));
  const pupilsOf = new Map(
    classes.map(({ id }) => {
      const ids = [
        ...new Set(
          enrolments.filter((row) => row.classSourcedId === id).map((row) => row.userSourcedId ?? ''),
        ),
      ];
      const pupils = ids.flatMap((user) => readPupil(users.get(user)) ?? []);
      return [id, { pupils, missing: ids.filter((user) => !users.has(user)) }] as const;
    }),
  );
  return succeed({
    version,
    classes: classes
      .map((one) => ({ ...one, pupils: pupilsOf.get(one.id)?.pupils.length ?? 0 }))
      .sort((one, other) => one.title.localeCompare(other.title, 'en', { numeric: true })),
    pupilsOf,
  });
}

function findSlips(files: OneRosterFiles): readonly RosterImportProblem[] {
  return Object.entries(NEEDED).flatMap(([name, columns]): RosterImportProblem[] => {
    const text = files.get(name);
    if (text === undefined) return [{ code: 'import-file-missing', name }];
    if (hasLostLetters(text)) return [{ code: 'import-not-utf8', name }];
    const { heads } = readRows(text);
    return columns
      .filter((column) => !heads.includes(column))
      .map((column) => ({ code: 'import-file-column-missing', name, column }));
  });
}

/** RFC 4180 with a byte-order mark allowed (1EdTech OneRoster 1.2 CSV Binding, section 3). */
function readRows(text: string): { readonly heads: readonly string[]; readonly rows: readonly Row[] } {
  const [heads = [], ...lines] = papa.parse(text.replace(/^\uFEFF/, ''), { skipEmptyLines: 'greedy' }).data;
  const rows = lines.map((line) => Object.fromEntries(heads.map((head, at) => [head, line[at] ?? ''])));
  return { heads, rows };
}

/** Whether a row stands; `status` is filled in sets of changes alone (section 3, "Bulk" and "Delta"). */
function isThere(row: Row): boolean {
  return row.status !== 'tobedeleted';
}

/** Dates are `2002-04-23`, so that their order is that of their letters; an end is the first day after. */
function isOn({ beginDate = '', endDate = '' }: Row, day: string): boolean {
  return (beginDate === '' || beginDate <= day) && (endDate === '' || endDate > day);
}

function readPupil(row: Row | undefined): ListedPupil | null {
  if (!row) return null;
  return {
    id: row.sourcedId ?? '',
    given: row.preferredGivenName || (row.givenName ?? ''),
    family: row.preferredFamilyName || (row.familyName ?? ''),
  };
}
