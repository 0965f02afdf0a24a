import papa from 'papaparse';
import type { BundleProblem } from './bundle-problem.ts';
import type { Column, ValueKind } from './column.ts';
import type { Row } from './read-table.ts';
import { buildManifestRows, MANIFEST_FILE } from './set-manifest.ts';
import { type OneRosterVersion, TABLES, type TableShape } from './tables.ts';

/** Files of a set by name, ready to be encoded as UTF-8. */
export interface WrittenTables {
  readonly files: ReadonlyMap<string, string>;
  readonly problems: readonly BundleProblem[];
}

/** What a spreadsheet runs when a cell begins with it (OWASP, CSV Injection), with the space around. */
const FORMULA_LEAD = /^[\s=+\-@]*[=+\-@\t\r\n][\s=+\-@]*/;

/**
 * A free text that no spreadsheet runs and no reader stumbles over: what would start a formula is taken away, and
 * carriage returns become spaces (v1.2 CSV Binding, section 3). An apostrophe before it, as in a teacher's own
 * sheet, would become part of the text in a gradebook.
 */
export function getSafeText(text: string): string {
  return text.replace(FORMULA_LEAD, '').replace(/\r\n?/g, ' ');
}

/** The files of a set whose tables hold all their rows; tables without rows are absent. Columns in the table's order. */
export function writeTables(
  version: OneRosterVersion,
  tables: Readonly<Record<string, readonly Row[]>>,
): WrittenTables {
  const problems: BundleProblem[] = [];
  const present = Object.entries(tables).filter(([, rows]) => rows.length > 0);
  const manifest = buildManifestRows(version, new Set(present.map(([table]) => table)));
  const files = new Map([[MANIFEST_FILE, buildText(manifest)]]);
  for (const [table, rows] of present) {
    const shape = TABLES[version][table] ?? [];
    const file = `${table}.csv`;
    const records = rows.map((row) => shape.map((column) => getField(row, column)));
    files.set(file, buildText([shape.map(({ name }) => name), ...records]));
    problems.push(...rows.flatMap((row) => findChanged(row, shape, file)));
  }
  return { files, problems };
}

function getField(row: Row, { name, kind }: Column): string {
  if (isBlank(name)) return '';
  const written = row[name] ?? '';
  return isFreeText(kind) ? getSafeText(written) : written;
}

function isFreeText(kind: ValueKind): boolean {
  return kind === 'text' || kind === 'texts';
}

function findChanged(row: Row, shape: TableShape, file: string): readonly BundleProblem[] {
  return shape
    .filter((column) => isFreeText(column.kind) && getField(row, column) !== (row[column.name] ?? ''))
    .map(({ name }) => ({ code: 'bundle-text-made-safe', file, id: row.sourcedId ?? '', column: name }));
}

/** Blank where all rows are given (v1.2 CSV Binding, section 3, "Bulk"). */
function isBlank(name: string): boolean {
  return name === 'status' || name === 'dateLastModified';
}

function buildText(lines: readonly (readonly string[])[]): string {
  return `${papa.unparse(lines, { newline: '\r\n' })}\r\n`;
}
