import { type BundleFault, buildSlip } from './bundle-fault.ts';
import { findValueRule } from './check-value.ts';
import type { Column } from './column.ts';
import type { RawTable } from './read-table.ts';
import type { FileMode } from './set-manifest.ts';
import { FORMER_USER_COLUMN, type TableShape } from './tables.ts';

/** A file of a set, and what it must look like. */
export interface TableCheck {
  readonly file: string;
  readonly raw: RawTable;
  readonly shape: TableShape;
  readonly mode: FileMode;
}

/** Everything that one file breaks by itself: heads, records and fields. */
export function checkTable(check: TableCheck): readonly BundleFault[] {
  const { file, raw } = check;
  if (raw.faults.some(({ rule }) => rule === 'quotes')) return raw.faults;
  const faults = [...raw.faults, ...checkHeads(check)];
  if (raw.records.length === 0) faults.push(buildSlip('has-rows', { file }));
  const columns = check.shape.flatMap((column) => {
    const at = raw.heads.indexOf(column.name);
    return at < 0 ? [] : [{ column, at }];
  });
  raw.records.forEach((record, index) => {
    faults.push(...checkRecord(check, record, { number: index + 2, columns }));
  });
  return [...faults, ...findRepeatedIds(check)];
}

function checkHeads({ file, raw, shape }: TableCheck): readonly BundleFault[] {
  const { heads } = raw;
  const faults: BundleFault[] = [];
  if (new Set(heads).size !== heads.length) faults.push(buildSlip('heads-once', { file }));
  const wanted = getWantedHeads(file, heads, shape);
  const wrong = wanted.findIndex((name, at) => heads[at] !== name);
  if (wrong >= 0) {
    const [column, found] = [wanted[wrong] ?? null, heads[wrong] ?? null];
    faults.push(buildSlip('heads-order', { file, record: 1, column, found }));
  }
  return faults;
}

function getWantedHeads(file: string, heads: readonly string[], shape: TableShape): readonly string[] {
  const names = shape.map(({ name }) => name);
  const { name, after } = FORMER_USER_COLUMN;
  if (file !== 'users.csv' || !heads.includes(name) || !names.includes(after)) return names;
  const at = names.indexOf(after) + 1;
  return [...names.slice(0, at), name, ...names.slice(at)];
}

interface RecordPlace {
  readonly number: number;
  readonly columns: readonly { readonly column: Column; readonly at: number }[];
}

function checkRecord(
  { file, raw, mode }: TableCheck,
  record: readonly string[],
  { number, columns }: RecordPlace,
): readonly BundleFault[] {
  if (record.length !== raw.heads.length) {
    return [buildSlip('field-count', { file, record: number, found: String(record.length) })];
  }
  return columns.flatMap(({ column, at }) => {
    const found = record[at] ?? '';
    const rule = findModeRule(column.name, found, mode) ?? findValueRule(column, found);
    return rule ? [buildSlip(rule, { file, record: number, column: column.name, found })] : [];
  });
}

/** `status` and `dateLastModified` (v1.2 CSV Binding, section 3, "Bulk" and "Delta"). */
function findModeRule(name: string, found: string, mode: FileMode): 'bulk-blank' | 'delta-filled' | null {
  if (name !== 'status' && name !== 'dateLastModified') return null;
  if (mode === 'bulk') return found === '' ? null : 'bulk-blank';
  const fits = name === 'status' ? found === 'active' || found === 'tobedeleted' : found !== '';
  return fits ? null : 'delta-filled';
}

function findRepeatedIds({ file, raw }: TableCheck): readonly BundleFault[] {
  const at = raw.heads.indexOf('sourcedId');
  const seen = new Set<string>();
  return raw.records.flatMap((record, index) => {
    const found = record[at];
    if (found === undefined || !seen.has(found)) {
      if (found !== undefined) seen.add(found);
      return [];
    }
    return [buildSlip('id-once', { file, record: index + 2, column: 'sourcedId', found })];
  });
}
