import { type BundleFault, buildSlip } from './bundle-fault.ts';
import { checkSense } from './check-sense.ts';
import { checkTable } from './check-table.ts';
import { type Row, readRawTable, readRows } from './read-table.ts';
import { MANIFEST_FILE, readManifest, type SetManifest } from './set-manifest.ts';
import { type OneRosterVersion, TABLES } from './tables.ts';

/** One file of a set as it was found. */
export interface BundleFile {
  /** Within the set, with its folder where it lies in one. */
  readonly path: string;
  /** Its bytes read as UTF-8; what is not UTF-8 stands as U+FFFD. */
  readonly text: string;
  /** How the archive packed it; null in a folder. */
  readonly packing: 'stored' | 'deflated' | 'other' | null;
}

/** A set of OneRoster files. */
export interface Bundle {
  /** The archive's or folder's own name. */
  readonly name: string;
  readonly isArchive: boolean;
  readonly files: readonly BundleFile[];
}

/** What was found in a set. */
export interface BundleCheck {
  /** Null where no known version could be told; the tables were not checked then. */
  readonly version: OneRosterVersion | null;
  /** Rows by table, of the tables that are there. */
  readonly rows: ReadonlyMap<string, readonly Row[]>;
  readonly faults: readonly BundleFault[];
}

/** Holds a set to every {@link BundleRule}. A manifest alone is a sound set: it says that nothing is new. */
export function checkBundle(bundle: Bundle): BundleCheck {
  const faults = checkArchive(bundle);
  const texts = new Map(bundle.files.map(({ path, text }) => [path, text]));
  const manifestText = texts.get(MANIFEST_FILE);
  if (manifestText === undefined) {
    return { version: null, rows: new Map(), faults: [...faults, buildSlip('manifest-there')] };
  }
  const manifest = readManifest(manifestText);
  const { version } = manifest;
  faults.push(...manifest.faults);
  if (version === null) return { version, rows: new Map(), faults };
  faults.push(...checkFiles(texts, version, manifest));
  const rows = new Map<string, readonly Row[]>();
  for (const [table, shape] of Object.entries(TABLES[version])) {
    const file = `${table}.csv`;
    const text = texts.get(file);
    if (text === undefined) continue;
    const raw = readRawTable(file, text);
    faults.push(...checkTable({ file, raw, shape, mode: manifest.modes.get(table) ?? 'bulk' }));
    rows.set(table, readRows(raw));
  }
  faults.push(...checkSense({ version, modes: manifest.modes, rows }));
  return { version, rows, faults };
}

function checkArchive({ name, isArchive, files }: Bundle): BundleFault[] {
  return [
    ...(isArchive && !name.endsWith('.zip') ? [buildSlip('zip-name', { found: name })] : []),
    ...files.flatMap(({ path, packing }) => [
      ...(packing === 'other' ? [buildSlip('zip-method', { file: path })] : []),
      ...(path.includes('/') ? [buildSlip('at-root', { file: path })] : []),
    ]),
  ];
}

function checkFiles(
  texts: ReadonlyMap<string, string>,
  version: OneRosterVersion,
  { modes }: SetManifest,
): readonly BundleFault[] {
  const tables = Object.keys(TABLES[version]);
  const known = new Set([MANIFEST_FILE, ...tables.map((table) => `${table}.csv`)]);
  const strangers = [...texts.keys()].filter((path) => !path.includes('/') && !known.has(path));
  const untrue = tables.filter((table) => modes.has(table) !== texts.has(`${table}.csv`));
  return [
    ...strangers.map((file) => buildSlip('file-known', { file })),
    ...untrue.map((table) => buildSlip('manifest-true', { file: `${table}.csv` })),
  ];
}
