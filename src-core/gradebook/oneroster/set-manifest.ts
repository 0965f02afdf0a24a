import { type BundleFault, buildSlip } from './bundle-fault.ts';
import { type RawTable, readRawTable } from './read-table.ts';
import { type OneRosterVersion, TABLES } from './tables.ts';

/** How a file of a set is to be taken: all rows, or changes alone. */
export type FileMode = 'bulk' | 'delta';

/** A set’s version and which tables it holds in which mode, with all that its manifest.csv breaks. */
export interface SetManifest {
  /** Null: a version that is not known, or none. */
  readonly version: OneRosterVersion | null;
  /** By table; absent ones are left out. */
  readonly modes: ReadonlyMap<string, FileMode>;
  readonly faults: readonly BundleFault[];
}

/** The manifest's name in a set. */
export const MANIFEST_FILE = 'manifest.csv';

const OPTIONAL = ['source.systemName', 'source.systemCode'];

/** Version of the manifest's own form, the same for both versions of the binding. */
const FORM_VERSION = '1.0';

/** Reads and checks manifest.csv (v1.2 CSV Binding, section 3, "manifest.csv"). */
export function readManifest(text: string): SetManifest {
  const raw = readRawTable(MANIFEST_FILE, text);
  const faults: BundleFault[] = [...raw.faults];
  if (raw.heads.join(',') !== 'propertyName,value') {
    faults.push(buildSlip('manifest-heads', { file: MANIFEST_FILE, found: raw.heads.join(',') }));
  }
  const properties = readProperties(raw, faults);
  const version = findVersion(properties.get('oneroster.version'));
  if (properties.get('manifest.version') !== FORM_VERSION)
    faults.push(badValue(properties, 'manifest.version'));
  if (version === null) {
    faults.push(badValue(properties, 'oneroster.version'));
    return { version, modes: new Map(), faults };
  }
  const tables = Object.keys(TABLES[version]);
  faults.push(...findStrangers(properties, tables));
  return { version, modes: readModes(properties, tables, faults), faults };
}

function readProperties({ records }: RawTable, faults: BundleFault[]): ReadonlyMap<string, string> {
  const properties = new Map<string, string>();
  records.forEach(([name = '', value = ''], at) => {
    if (properties.has(name)) {
      faults.push(buildSlip('manifest-once', { file: MANIFEST_FILE, record: at + 2, found: name }));
    } else properties.set(name, value);
  });
  return properties;
}

function findVersion(text: string | undefined): OneRosterVersion | null {
  return text === '1.1' || text === '1.2' ? text : null;
}

function badValue(properties: ReadonlyMap<string, string>, name: string): BundleFault {
  const found = properties.get(name);
  const rule = found === undefined ? 'manifest-whole' : 'manifest-value';
  return buildSlip(rule, { file: MANIFEST_FILE, column: name, ...(found === undefined ? {} : { found }) });
}

function findStrangers(
  properties: ReadonlyMap<string, string>,
  tables: readonly string[],
): readonly BundleFault[] {
  const known = new Set([
    'manifest.version',
    'oneroster.version',
    ...OPTIONAL,
    ...tables.map((table) => `file.${table}`),
  ]);
  return [...properties.keys()]
    .filter((name) => !known.has(name))
    .map((found) => buildSlip('manifest-known', { file: MANIFEST_FILE, found }));
}

function readModes(
  properties: ReadonlyMap<string, string>,
  tables: readonly string[],
  faults: BundleFault[],
): ReadonlyMap<string, FileMode> {
  const modes = new Map<string, FileMode>();
  for (const table of tables) {
    const mode = properties.get(`file.${table}`);
    if (mode === 'bulk' || mode === 'delta') modes.set(table, mode);
    else if (mode !== 'absent') faults.push(badValue(properties, `file.${table}`));
  }
  return modes;
}

/** The rows of a manifest, heads first, for a set whose files hold all their rows. */
export function buildManifestRows(
  version: OneRosterVersion,
  present: ReadonlySet<string>,
): readonly (readonly string[])[] {
  const files = Object.keys(TABLES[version]).sort((a, b) => compareNames(a, b));
  return [
    ['propertyName', 'value'],
    ['manifest.version', FORM_VERSION],
    ['oneroster.version', version],
    ...files.map((table) => [`file.${table}`, present.has(table) ? 'bulk' : 'absent']),
    ['source.systemName', 'Routemark'],
  ];
}

/** The manifest's own order: by letter, whatever its case. */
function compareNames(a: string, b: string): number {
  return a.toLowerCase() < b.toLowerCase() ? -1 : 1;
}
