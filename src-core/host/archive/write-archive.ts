import { createReadStream, createWriteStream } from 'node:fs';
import { open, rename, rm, statfs } from 'node:fs/promises';
import path from 'node:path';
import { pipeline, Readable } from 'node:stream';
import { pipeline as pipeAll } from 'node:stream/promises';
import { ZipFile } from 'yazl';
import {
  type ArchiveManifest,
  type ArchiveProblem,
  buildManifestText,
  MANIFEST_NAME,
} from '../../app/archive.ts';
import type { BringProblem } from '../../contract/problem.ts';
import type { Progress } from '../../contract/progress.ts';
import { fail, type Outcome, succeed } from '../../platform/outcome.ts';
import type { StorageProblem } from '../../platform/storage-problem.ts';
import { isWithin } from '../is-within.ts';
import { syncFolder } from '../sync-folder.ts';
import { abandon, isThere, nameTemporary } from '../temporary-file.ts';
import { describeReadError, describeWriteError } from '../write-error.ts';
import { findDamagedFiles } from './check-archive.ts';
import { openHashTap } from './hash-tap.ts';
import { isClip, type LessonFile, listLessonFiles } from './list-lesson-files.ts';
import { openArchive } from './read-archive.ts';

/** A lesson folder and the archive it is to be kept in. */
export interface ArchiveOrder {
  readonly folder: string;
  /** The archive's file; nothing may be there. */
  readonly file: string;
  readonly lesson: ArchiveManifest['lesson'];
  readonly withClips: boolean;
  /** Where the clips lie; left out: in the lesson. */
  readonly clipsFolder?: string;
  /** ISO 8601 in UTC. */
  readonly made: string;
}

/** How long work is watched and stopped; progress counts the lesson's bytes twice: written, and read back. */
export interface ArchiveJob {
  readonly signal: AbortSignal;
  readonly onProgress: (progress: Progress) => void;
}

/** An archive that was written, read back and compared. */
export interface WrittenArchive {
  readonly files: number;
  /** Of the lesson's files, unpacked. */
  readonly bytes: number;
  /** Pupils' video is in it. */
  readonly holdsClips: boolean;
}

type Written = Outcome<WrittenArchive, ArchiveProblem | StorageProblem | BringProblem>;

/**
 * Keeps a lesson in one archive: written under a temporary name, read back and compared file by file, and only then
 * given its name. On failure, and when stopped, nothing is left behind. Links, names that no archive can hold, and clips
 * that do not lie in the lesson are left out and named.
 */
export async function writeArchive(order: ArchiveOrder, job: ArchiveJob): Promise<Written> {
  const { folder, file } = order;
  const home = path.dirname(path.resolve(file));
  if (isWithin(home, path.resolve(folder))) return fail({ code: 'archive-within-lesson', path: file });
  if (await isThere(file)) return fail({ code: 'archive-exists', path: file });
  const temporary = nameTemporary(home);
  try {
    const { files, problems } = await listLessonFiles(folder, order.withClips);
    const bytes = files.reduce((sum, one) => sum + one.bytes, 0);
    const freeBytes = await findFreeBytes(home);
    if (freeBytes !== null && freeBytes < bytes)
      return fail({ code: 'disk-too-small', neededBytes: bytes, freeBytes });
    const onBytes = openProgress(job, files.length, 2 * bytes);
    await pack(order, files, { temporary, signal: job.signal, onBytes });
    if (!(await isWhole(temporary, job.signal, onBytes)))
      return await abandon(temporary, { code: 'copy-differs', path: file, cause: 'READ-BACK' });
    if (await isThere(file)) return await abandon(temporary, { code: 'archive-exists', path: file });
    await rename(temporary, file);
    await syncFolder(home);
    const holdsClips = files.some((one) => isClip(one.path));
    return succeed({ files: files.length, bytes, holdsClips }, [...problems, ...findOutside(order)]);
  } catch (error) {
    await rm(temporary, { force: true }).catch(() => {});
    if (job.signal.aborted) throw error;
    const read = (error as NodeJS.ErrnoException).path?.startsWith(path.resolve(folder));
    return fail(
      read
        ? describeReadError(error, (error as NodeJS.ErrnoException).path ?? folder)
        : describeWriteError(error, file),
    );
  }
}

function findOutside({ folder, withClips, clipsFolder }: ArchiveOrder): readonly ArchiveProblem[] {
  const isOutside = clipsFolder !== undefined && !isWithin(path.resolve(clipsFolder), path.resolve(folder));
  return withClips && isOutside ? [{ code: 'archive-left-out', path: clipsFolder, why: 'outside' }] : [];
}

function findFreeBytes(folder: string): Promise<number | null> {
  return statfs(folder).then(
    ({ bavail, bsize }) => bavail * bsize,
    () => null,
  );
}

/** Bytes add up to progress; the files are told as a share of them. */
function openProgress({ onProgress }: ArchiveJob, files: number, totalBytes: number) {
  let doneBytes = 0;
  return (bytes: number) => {
    doneBytes += bytes;
    const done = totalBytes === 0 ? files : Math.floor((files * doneBytes) / totalBytes);
    onProgress({ step: 'copy', done, total: files, doneBytes, totalBytes });
  };
}

interface Packing {
  readonly temporary: string;
  readonly signal: AbortSignal;
  readonly onBytes: (bytes: number) => void;
}

/** Films, pictures and what is packed already get no smaller. */
const PACKED = /\.(mp4|mov|m4v|3gp|webm|mkv|avi|jpe?g|png|heic|heif|pdf|zip|xlsx)$/i;

async function pack(
  { folder, lesson, made }: ArchiveOrder,
  files: readonly LessonFile[],
  { temporary, signal, onBytes }: Packing,
): Promise<void> {
  const zip = new ZipFile();
  const listed: ArchiveManifest['files'] = [];
  for (const { path: name, modifiedMs } of files) {
    const options = { mtime: toZipTime(modifiedMs), mode: 0o644, compress: !PACKED.test(name) };
    zip.addReadStreamLazy(name, options, (give) => {
      // What is listed is what was read, whatever has been written to the file meanwhile.
      const tap = openHashTap(onBytes, (tapped) => listed.push({ path: name, ...tapped, modifiedMs }));
      give(null, tap);
      pipeline(createReadStream(path.join(folder, name)), tap, () => {});
    });
  }
  // Asked for after the last file, when all that it lists has gone in.
  zip.addReadStreamLazy(MANIFEST_NAME, { mtime: new Date(made) }, (give) => {
    const holdsClips = listed.some((one) => isClip(one.path));
    const text = buildManifestText({ made, lesson, holdsClips, files: listed });
    give(null, Readable.from([Buffer.from(text, 'utf8')]));
  });
  zip.end();
  zip.on('error', (error: Error) => {
    (zip.outputStream as Readable).destroy(error);
  });
  await pipeAll(zip.outputStream, createWriteStream(temporary, { flags: 'wx' }), { signal });
  const handle = await open(temporary, 'r+');
  await handle.sync().finally(() => handle.close());
}

/** The packer throws at a date before 1970, out of reach of any handler. A file's own date is in the archive's list. */
function toZipTime(ms: number): Date {
  return new Date(Math.max(0, ms));
}

async function isWhole(
  temporary: string,
  signal: AbortSignal,
  onBytes: (bytes: number) => void,
): Promise<boolean> {
  const archive = await openArchive(temporary);
  if (!archive.ok) return false;
  try {
    return (await findDamagedFiles(archive.value, signal, onBytes)).length === 0;
  } finally {
    archive.value.close();
  }
}
