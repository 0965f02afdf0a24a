import papa from 'papaparse';
import { type BundleFault, buildSlip } from './bundle-fault.ts';

/** A row by its heads; a field that is not there is undefined. */
export type Row = Readonly<Record<string, string>>;

/** A file's rows as they stand. */
export interface RawTable {
  readonly heads: readonly string[];
  /** Fields of each record after the heads; none where quotes are broken. */
  readonly records: readonly (readonly string[])[];
  readonly faults: readonly BundleFault[];
}

const MARK = '\uFEFF';

/**
 * A file of a set as rows (RFC 4180; a byte-order mark is tolerated, as v1.2 CSV Binding section 3 asks of readers).
 * Letters that were not UTF-8 (U+FFFD after decoding), carriage returns within fields and stray quotes are faults; what can be read is read.
 */
export function readRawTable(file: string, text: string): RawTable {
  const body = text.startsWith(MARK) ? text.slice(1) : text;
  const parsed = papa.parse(body, { delimiter: ',' });
  const lines = parsed.data;
  // The line end after the last record is not an empty record.
  if (lines.at(-1)?.length === 1 && lines.at(-1)?.[0] === '') lines.pop();
  const [heads = [], ...records] = lines;
  const broken = parsed.errors.map(({ row }) => buildSlip('quotes', { file, record: (row ?? 0) + 1 }));
  // Where a quote is astray, fields and records are not what they seem.
  if (broken.length > 0) return { heads, records: [], faults: broken };
  const faults: BundleFault[] = [];
  if (text.includes('\uFFFD')) faults.push(buildSlip('utf8', { file }));
  if (/\r(?!\n)/.test(body) || lines.some((line) => line.some((field) => field.includes('\r')))) {
    faults.push(buildSlip('no-carriage-return', { file }));
  }
  return { heads, records, faults };
}

/** The records by their heads. */
export function readRows({ heads, records }: RawTable): readonly Row[] {
  return records.map((record) => Object.fromEntries(heads.map((head, at) => [head, record[at] ?? ''])));
}
