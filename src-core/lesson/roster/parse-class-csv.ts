import papa from 'papaparse';
import type { ColumnChoice, ListedPupil } from './class-list.ts';
import { hasLostLetters } from './lost-letters.ts';
import type { RosterImportProblem } from './roster-import-problem.ts';

/** A class list read from a CSV of any make. */
export interface ClassCsv {
  readonly heads: readonly string[];
  /** What was taken for what: as chosen, guessed where nothing was chosen. */
  readonly columns: ColumnChoice;
  /** Empty where a column is missing. */
  readonly pupils: readonly ListedPupil[];
  readonly problems: readonly RosterImportProblem[];
}

/** Heads in common use, most telling first, as compared: small letters and digits alone. */
const GUESSES: Readonly<Record<keyof ColumnChoice, readonly string[]>> = {
  id: [
    'sourcedid',
    'studentid',
    'pupilid',
    'studentnumber',
    'pupilnumber',
    'localid',
    'id',
    'number',
    'userid',
  ],
  given: ['given', 'givenname', 'firstname', 'first', 'forename', 'preferredname'],
  family: ['family', 'familyname', 'lastname', 'last', 'surname'],
};

const COLUMNS = ['id', 'given', 'family'] as const;

/** Reads a class list; `chosen` says which columns hold what, null guesses from the heads. */
export function parseClassCsv(text: string, name: string, chosen: ColumnChoice | null): ClassCsv {
  const plain = text.replace(/^\uFEFF/, '');
  const rows = papa.parse(plain, { skipEmptyLines: false }).data;
  const heads = (rows[0] ?? []).map((head) => head.trim());
  const columns = chooseColumns(heads, chosen);
  const base = { heads, columns, pupils: [] };
  if (hasLostLetters(plain)) return { ...base, problems: [{ code: 'import-not-utf8', name }] };
  if (heads.filter((head) => head !== '').length < COLUMNS.length) {
    return { ...base, problems: [{ code: 'import-unreadable', name }] };
  }
  const missing = COLUMNS.filter((column) => columns[column] === null);
  if (missing.length > 0) {
    return {
      ...base,
      problems: missing.map((column) => ({ code: 'import-column-missing', column, heads })),
    };
  }
  return { ...base, ...readPupils(rows, heads, columns) };
}

function chooseColumns(heads: readonly string[], chosen: ColumnChoice | null): ColumnChoice {
  const find = (column: keyof ColumnChoice) => {
    const wanted = chosen?.[column] ?? null;
    if (wanted !== null) return heads.includes(wanted) ? wanted : null;
    for (const guess of GUESSES[column]) {
      const head = heads.find((one) => one.toLowerCase().replace(/[^a-z0-9]/g, '') === guess);
      if (head !== undefined) return head;
    }
    return null;
  };
  return { id: find('id'), given: find('given'), family: find('family') };
}

function readPupils(
  rows: readonly (readonly string[])[],
  heads: readonly string[],
  columns: ColumnChoice,
): Pick<ClassCsv, 'pupils' | 'problems'> {
  const pupils: ListedPupil[] = [];
  const problems: RosterImportProblem[] = [];
  rows.slice(1).forEach((row, at) => {
    if (row.every((field) => field.trim() === '')) return;
    const line = at + 2;
    const [id = '', given = '', family = ''] = COLUMNS.map((column) =>
      (row[heads.indexOf(columns[column] ?? '')] ?? '').trim(),
    );
    if (id === '' || given === '' || family === '') problems.push({ code: 'import-line-incomplete', line });
    else if (pupils.some((pupil) => pupil.id === id)) problems.push({ code: 'import-id-twice', line, id });
    else pupils.push({ id, given, family });
  });
  if (pupils.length === 0) problems.push({ code: 'import-empty' });
  return { pupils, problems };
}
