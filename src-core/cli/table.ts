import { toOneLine } from './one-line.ts';

/** Widest a column may get before its text loses its beginning, in characters. */
const WIDEST = 60;

/** Columns as wide as their widest cell, two spaces between; the last column is never cut or padded. */
export function formatTable(cells: readonly (readonly string[])[], indent = ''): string {
  const rows = cells.map((row) => row.map(toOneLine));
  const widths: number[] = [];
  for (const row of rows) {
    row.forEach((cell, at) => {
      widths[at] = Math.max(widths[at] ?? 0, Math.min(WIDEST, getWidth(cell)));
    });
  }
  const lines = rows.map((row) => {
    const padded = row.map((cell, at) => (at === row.length - 1 ? cell : padCell(cell, widths[at] ?? 0)));
    return `${indent}${padded.join('  ')}`.trimEnd();
  });
  return lines.map((line) => `${line}\n`).join('');
}

function padCell(cell: string, width: number): string {
  const letters = [...cell];
  // Paths tell more at their end.
  if (letters.length > width) return `…${letters.slice(1 - width).join('')}`;
  return cell + ' '.repeat(width - letters.length);
}

function getWidth(cell: string): number {
  return [...cell].length;
}
