import papa from 'papaparse';
import type { ColumnKind } from './grade-sheet.ts';

/** Rows under heads, and how each column may be written; null: an empty cell. */
export interface CsvSheet {
  readonly columns: readonly { readonly head: string; readonly kind: ColumnKind }[];
  readonly rows: readonly (readonly (string | number | null)[])[];
}

/** Why a sheet's text may not be what another program expects; the text is written all the same. */
export type CsvProblem =
  /** A spreadsheet would take this id for a formula. Ids are never changed: a gradebook knows them by heart. */
  { readonly code: 'sheet-id-formula'; readonly row: number; readonly id: string };

/** A sheet as CSV text, and what could not be made safe in it. */
export interface CsvText {
  readonly text: string;
  readonly problems: readonly CsvProblem[];
}

/** Characters that make a spreadsheet read a cell as a formula when it begins with one (OWASP, CSV Injection). */
const FORMULA_START = /^[=+\-@\t\r\n]/;

/** Other programs' separators: within quotes, a reader that guesses the separator is not led to take one of these. */
const OTHER_SEPARATOR = /[;\t|]/;

/** A text that no spreadsheet runs: a dangerous first character is led by an apostrophe (OWASP, CSV Injection). */
export function protectText(text: string): string {
  return FORMULA_START.test(text) ? `'${text}` : text;
}

/**
 * A sheet as CSV by RFC 4180: comma, CRLF after every line, heads first, quotes where needed. Heads and text
 * columns are made safe for spreadsheets; ids and numbers stand as they are. Numbers have a point; an empty cell
 * is no number. To be written as UTF-8.
 */
export function buildCsv(sheet: CsvSheet): CsvText {
  const heads = sheet.columns.map(({ head }) => protectText(head));
  const rows = sheet.rows.map((row) =>
    row.map((cell, column) => buildCell(cell, sheet.columns[column]?.kind === 'text')),
  );
  return {
    text: [heads, ...rows].map((line) => `${buildLine(line)}\r\n`).join(''),
    problems: findFormulaIds(sheet),
  };
}

function buildLine(cells: readonly (string | number)[]): string {
  // A lone empty cell would be an empty line, which readers skip.
  const isLone = cells.length === 1;
  return papa.unparse([cells], {
    newline: '\r\n',
    quotes: cells.map((cell) => isLone || OTHER_SEPARATOR.test(String(cell))),
  });
}

function buildCell(cell: string | number | null, isText: boolean): string | number {
  if (cell === null) return '';
  return isText && typeof cell === 'string' ? protectText(cell) : cell;
}

function findFormulaIds(sheet: CsvSheet): readonly CsvProblem[] {
  return sheet.rows.flatMap((row, at) =>
    row.flatMap((cell, column): CsvProblem[] =>
      sheet.columns[column]?.kind === 'id' && FORMULA_START.test(String(cell))
        ? [{ code: 'sheet-id-formula', row: at + 1, id: String(cell) }]
        : [],
    ),
  );
}
