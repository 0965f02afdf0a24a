import { Writable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { ArchiveManifest } from '../../app/archive.ts';
import { openHashTap } from './hash-tap.ts';
import type { OpenArchive } from './read-archive.ts';

/** What happens to a file's bytes while they are checked. */
export interface UnpackOrder {
  readonly file: ArchiveManifest['files'][number];
  readonly into: Writable;
  readonly signal: AbortSignal;
  readonly onBytes: (bytes: number) => void;
}

/**
 * Unpacks one file and holds it against the list. False: it is missing, damaged, or not what was put in. Rejects where
 * the disk refuses what is written, and where it was stopped.
 */
export async function unpackFile(
  { openFile }: Pick<OpenArchive, 'openFile'>,
  { file, into, signal, onBytes }: UnpackOrder,
): Promise<boolean> {
  let isSame = false;
  const tap = openHashTap(onBytes, ({ bytes, sha256 }) => {
    isSame = bytes === file.bytes && sha256 === file.sha256;
  });
  try {
    const bytes = await openFile(file.path);
    if (!bytes) return false;
    await pipeline(bytes, tap, into, { signal });
  } catch (error) {
    // What the system says is about the disk; what the unpacking says is about the archive.
    if (signal.aborted || (error as NodeJS.ErrnoException).syscall !== undefined) throw error;
    return false;
  }
  return isSame;
}

/** Unpacks every file of an archive into nothing; gives those that are not what was put in. */
export async function findDamagedFiles(
  archive: OpenArchive,
  signal: AbortSignal,
  onBytes: (bytes: number) => void,
): Promise<readonly string[]> {
  const damaged: string[] = [];
  for (const file of archive.manifest.files) {
    const into = new Writable({ write: (_chunk, _encoding, done) => done() });
    if (!(await unpackFile(archive, { file, into, signal, onBytes }))) damaged.push(file.path);
  }
  return damaged;
}
