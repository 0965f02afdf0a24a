import { open as openFile } from 'node:fs/promises';
import type { Readable } from 'node:stream';
import { buffer } from 'node:stream/consumers';
import { promisify } from 'node:util';
import { crc32 } from 'node:zlib';
import { type Entry, open, type ZipFile, type ZipFileOptions } from 'yauzl';
import {
  type ArchiveManifest,
  type ArchiveProblem,
  findUnsafeName,
  MANIFEST_NAME,
  parseManifest,
} from '../../app/archive.ts';
import type { FolderProblem } from '../../intake/folder-problem.ts';
import { fail, type Outcome, succeed } from '../../platform/outcome.ts';

/** An archive whose list was read and whose names are safe; nothing of its files was looked at yet. */
export interface OpenArchive {
  readonly manifest: ArchiveManifest;
  /** A file's bytes, unpacked; null where the archive does not have it. Damage ends the stream with an error. */
  readonly openFile: (path: string) => Promise<Readable | null>;
  readonly close: () => void;
}

type OpenFailure = ArchiveProblem | FolderProblem;

/** More than the list of any lesson; guards the memory against an archive made to fill it. */
const LONGEST_MANIFEST = 64 * 1024 * 1024;

/** Opens an archive and reads its list. Close it when it was opened. */
export async function openArchive(file: string): Promise<Outcome<OpenArchive, OpenFailure>> {
  const zip = await openZip(file);
  if (!zip) return fail(await describeNoZip(file));
  const archive = await readList(zip, file);
  if (!archive.ok) zip.close();
  return archive;
}

/** Null: it is no whole zip archive. Names come as bytes, to be judged by {@link findUnsafeName} alone. */
function openZip(file: string): Promise<ZipFile | null> {
  const openPromise = promisify<string, object, ZipFile>(open);
  return openPromise(file, { lazyEntries: true, autoClose: false, decodeStrings: false }).catch(() => null);
}

/** A zip archive that lost its end still begins as one. */
async function describeNoZip(file: string): Promise<OpenFailure> {
  const handle = await openFile(file, 'r').catch(() => null);
  if (!handle) return { code: 'path-missing', path: file };
  try {
    const { buffer: begin } = await handle.read(Buffer.alloc(4), 0, 4, 0).catch(() => ({ buffer: null }));
    const isZip = begin?.toString('latin1') === 'PK\x03\x04';
    return { code: isZip ? 'archive-cut-short' : 'archive-not-ours', path: file };
  } finally {
    await handle.close();
  }
}

async function readList(zip: ZipFile, file: string): Promise<Outcome<OpenArchive, OpenFailure>> {
  const found = await readEntries(zip);
  if (!found) return fail({ code: 'archive-cut-short', path: file });
  const entries = new Map(found.map((entry) => [getName(entry), entry]));
  const list = entries.get(MANIFEST_NAME);
  if (!list) return fail({ code: 'archive-not-ours', path: file });
  const text = await readManifest(zip, list);
  if (text === null) return fail({ code: 'archive-damaged', path: file, files: [MANIFEST_NAME], whole: 0 });
  const manifest = parseManifest(text, file);
  if (!manifest.ok) return manifest;
  const unsafe = findUnsafeName(manifest.value, found.map(getName));
  if (unsafe !== null) return fail({ code: 'archive-unsafe', path: file, name: unsafe });
  return succeed({
    manifest: manifest.value,
    openFile: async (path) => {
      const entry = entries.get(path);
      return entry ? openEntry(zip, entry) : null;
    },
    close: () => zip.close(),
  });
}

function getName({ fileNameRaw }: Entry): string {
  return fileNameRaw.toString('utf8');
}

/** Null: the directory is damaged. Folders of their own are passed over. */
function readEntries(zip: ZipFile): Promise<readonly Entry[] | null> {
  return new Promise((resolve) => {
    const entries: Entry[] = [];
    zip.on('entry', (entry: Entry) => {
      if (!getName(entry).endsWith('/')) entries.push(entry);
      zip.readEntry();
    });
    zip.on('end', () => resolve(entries));
    zip.on('error', () => resolve(null));
    zip.readEntry();
  });
}

function openEntry(zip: ZipFile, entry: Entry): Promise<Readable> {
  const openStream = promisify<Entry, ZipFileOptions, Readable>(zip.openReadStream.bind(zip));
  return openStream(entry, {});
}

/** Null: it is not what was put in. The other files are checked by this one, so this one by the archive's own sum. */
async function readManifest(zip: ZipFile, entry: Entry): Promise<string | null> {
  if (entry.uncompressedSize > LONGEST_MANIFEST) return null;
  try {
    const bytes = await buffer(await openEntry(zip, entry));
    return crc32(bytes) === entry.crc32 ? bytes.toString('utf8') : null;
  } catch {
    return null;
  }
}
