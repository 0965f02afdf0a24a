import { type BundleFault, buildSlip, type SlipPlace } from './bundle-fault.ts';
import { splitList } from './check-value.ts';
import type { Column } from './column.ts';
import type { Row } from './read-table.ts';
import type { FileMode } from './set-manifest.ts';
import { type OneRosterVersion, RESULTS_NEED, TABLES } from './tables.ts';

/** All tables of a set that could be read. */
export interface SetTables {
  readonly version: OneRosterVersion;
  readonly modes: ReadonlyMap<string, FileMode>;
  /** By table. */
  readonly rows: ReadonlyMap<string, readonly Row[]>;
}

/** What tables break among each other, and rows within themselves. */
export function checkSense(tables: SetTables): readonly BundleFault[] {
  return [
    ...checkNeeds(tables),
    ...checkLinks(tables),
    ...checkSpans(tables),
    ...checkSchoolYears(tables),
    ...checkPrimaries(tables),
    ...checkScores(tables),
  ];
}

function checkNeeds({ version, modes }: SetTables): readonly BundleFault[] {
  if (modes.get('results') !== 'bulk') return [];
  return RESULTS_NEED[version]
    .filter((table) => !modes.has(table))
    .map((table) => buildSlip('results-need', { file: `${table}.csv` }));
}

/** A set of changes may point to rows that were given before; only tables with all their rows are searched. */
function checkLinks({ version, modes, rows }: SetTables): readonly BundleFault[] {
  const idsOf = new Map(
    [...rows]
      .filter(([table]) => modes.get(table) === 'bulk')
      .map(([table, its]) => [table, new Set(its.map(({ sourcedId }) => sourcedId))]),
  );
  return eachRow(rows, (table, row, place) =>
    (TABLES[version][table] ?? []).flatMap((column) => {
      const ids = idsOf.get(column.table ?? '');
      const lost = ids && findLostId(column, row, ids);
      return lost === undefined ? [] : [buildSlip('link', { ...place, column: column.name, found: lost })];
    }),
  );
}

function findLostId(
  { name, kind }: Column,
  row: Row,
  ids: ReadonlySet<string | undefined>,
): string | undefined {
  const written = row[name] ?? '';
  return (kind === 'guids' ? splitList(written) : [written]).find((id) => id !== '' && !ids.has(id));
}

function checkSpans({ rows }: SetTables): readonly BundleFault[] {
  return eachRow(rows, (_table, row, place) => {
    const start = row.startDate ?? row.beginDate ?? '';
    const { endDate = '' } = row;
    const isSpan = start !== '' && endDate !== '';
    return isSpan && endDate <= start
      ? [buildSlip('end-after-start', { ...place, column: 'endDate', found: endDate })]
      : [];
  });
}

function checkSchoolYears({ rows }: SetTables): readonly BundleFault[] {
  return eachRow(rows, (table, row, place) => {
    if (table !== 'academicSessions' || row.type !== 'schoolYear') return [];
    const { endDate = '', schoolYear = '' } = row;
    return schoolYear === '' || schoolYear === findLastYear(endDate)
      ? []
      : [buildSlip('school-year', { ...place, column: 'schoolYear', found: schoolYear })];
  });
}

/** The year of the last day before an exclusive end; an end on 1 January belongs to the year before. */
function findLastYear(endDate: string): string {
  const year = endDate.slice(0, 4);
  return endDate.endsWith('-01-01') ? String(Number(year) - 1) : year;
}

function checkPrimaries({ rows }: SetTables): readonly BundleFault[] {
  return eachRow(rows, (table, row, place) =>
    table === 'enrollments' && row.primary === 'true' && row.role !== 'teacher'
      ? [buildSlip('primary-teacher', { ...place, column: 'primary', found: row.role ?? '' })]
      : [],
  );
}

function checkScores({ rows }: SetTables): readonly BundleFault[] {
  const items = new Map((rows.get('lineItems') ?? []).map((row) => [row.sourcedId, row]));
  return eachRow(rows, (table, row, place) => {
    const { score = '' } = row;
    const item = table === 'results' ? items.get(row.lineItemSourcedId ?? '') : undefined;
    return item && score !== '' && isOutside(Number(score), item)
      ? [buildSlip('score-range', { ...place, column: 'score', found: score })]
      : [];
  });
}

/** Both ends are optional, and inclusive. */
function isOutside(score: number, { resultValueMin, resultValueMax }: Row): boolean {
  return (
    (!!resultValueMin && score < Number(resultValueMin)) ||
    (!!resultValueMax && score > Number(resultValueMax))
  );
}

function eachRow(
  rows: SetTables['rows'],
  check: (table: string, row: Row, place: SlipPlace) => readonly BundleFault[],
): readonly BundleFault[] {
  return [...rows].flatMap(([table, its]) =>
    its.flatMap((row, at) => check(table, row, { file: `${table}.csv`, record: at + 2 })),
  );
}
