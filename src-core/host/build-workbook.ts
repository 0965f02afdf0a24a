import writeExcelFile, { type Cell, type Row, type Sheet } from 'write-excel-file/node';
import type { AccountSheet } from '../gradebook/account-sheet.ts';
import type { GradeSheet } from '../gradebook/grade-sheet.ts';

/** What a workbook holds, and what its two sheets are called (at most 31 letters each, as spreadsheets ask). */
export interface WorkbookOrder {
  readonly marks: GradeSheet;
  readonly account: AccountSheet;
  readonly names: { readonly marks: string; readonly account: string };
}

/** Widest column, in characters. */
const WIDEST = 60;

/**
 * Both sheets as the bytes of an .xlsx file (ISO/IEC 29500): numbers as numbers, ids and text as text, which no
 * spreadsheet takes for a formula whatever it begins with; heads stay in sight; what is pencilled is in italics.
 */
export async function buildWorkbook({ marks, account, names }: WorkbookOrder): Promise<Uint8Array> {
  const rows = account.rows.map(({ cells, isPencilled }) =>
    cells.map((cell) => buildCell(cell, isPencilled)),
  );
  return writeExcelFile([
    buildSheet(
      names.marks,
      marks.columns.map(({ head }) => head),
      marks.rows.map((row) => row.map((cell) => buildCell(cell, false))),
    ),
    buildSheet(names.account, account.heads, rows),
  ]).toBuffer();
}

function buildSheet(name: string, heads: readonly string[], rows: readonly Row[]): Sheet<Buffer> {
  const top: Row = heads.map((value) => ({
    value,
    type: String,
    fontWeight: 'bold',
    bottomBorderStyle: 'thin',
  }));
  return {
    sheet: name,
    data: [top, ...rows],
    stickyRowsCount: 1,
    columns: heads.map((head, at) => ({ width: getWidth(head, rows, at) })),
  };
}

function buildCell(value: string | number | null, isPencilled: boolean): Cell {
  if (value === null || value === '') return null;
  const style = isPencilled ? { fontStyle: 'italic' as const } : {};
  return typeof value === 'number' ? { value, type: Number, ...style } : { value, type: String, ...style };
}

function getWidth(head: string, rows: readonly Row[], at: number): number {
  const lengths = rows.map((row) => {
    const cell = row[at];
    return cell && typeof cell === 'object' && 'value' in cell ? String(cell.value).length : 0;
  });
  return Math.min(WIDEST, Math.max(head.length, ...lengths) + 2);
}
