import papa from 'papaparse';

/** roster.csv as it stands, every column kept, whoever added it. */
export interface RosterTable {
  /** As written, in their order. */
  readonly heads: readonly string[];
  /** Fields by head in small letters; a line shorter than the heading has empty ones. */
  readonly rows: readonly Readonly<Record<string, string>>[];
}

/** The columns of a roster that is begun anew. */
const HEADS = ['id', 'given', 'family', 'squad', 'attendance', 'arrived', 'stills'] as const;

/** Splits roster.csv; null text, or one without a heading, is an empty roster of the usual columns. */
export function parseRosterTable(text: string | null): RosterTable {
  const [heading = [], ...lines] = papa.parse((text ?? '').replace(/^\uFEFF/, ''), {
    skipEmptyLines: 'greedy',
  }).data;
  if (heading.length === 0) return { heads: [...HEADS], rows: [] };
  const keys = heading.map((head) => head.trim().toLowerCase());
  const rows = lines.map((line) => Object.fromEntries(keys.map((key, at) => [key, line[at] ?? ''])));
  return { heads: heading.map((head) => head.trim()), rows };
}

/** roster.csv's text for a table: the heading, then a line for each row, with a line end at the end. */
export function buildRosterText({ heads, rows }: RosterTable): string {
  const lines = rows.map((row) => heads.map((head) => row[head.toLowerCase()] ?? ''));
  return `${papa.unparse([[...heads], ...lines], { newline: '\n' })}\n`;
}

/** The table with this column, at its end where it was not there. */
export function withColumn(table: RosterTable, column: string): RosterTable {
  return table.heads.some((head) => head.toLowerCase() === column)
    ? table
    : { ...table, heads: [...table.heads, column] };
}
