import { createWriteStream } from 'node:fs';
import { mkdir, readdir, rename, rm, rmdir, statfs, utimes } from 'node:fs/promises';
import path from 'node:path';
import type { ArchiveManifest, ArchiveProblem } from '../../app/archive.ts';
import type { BringProblem } from '../../contract/problem.ts';
import type { FolderProblem } from '../../intake/folder-problem.ts';
import { fail, type Outcome, succeed } from '../../platform/outcome.ts';
import type { StorageProblem } from '../../platform/storage-problem.ts';
import { syncFolder } from '../sync-folder.ts';
import { nameTemporary } from '../temporary-file.ts';
import { describeWriteError } from '../write-error.ts';
import { unpackFile } from './check-archive.ts';
import { type OpenArchive, openArchive } from './read-archive.ts';
import type { ArchiveJob } from './write-archive.ts';

/** An archive and the lesson folder it is to become. */
export interface RestoreOrder {
  readonly file: string;
  /** Not there yet, or empty. */
  readonly folder: string;
  /** Whether a damaged archive gives the files that are whole; otherwise it gives nothing. */
  readonly onlyWhole: boolean;
}

/** A lesson folder that came out of an archive. */
export interface RestoredLesson {
  readonly manifest: ArchiveManifest;
  readonly files: number;
}

type Restored = Outcome<RestoredLesson, ArchiveProblem | FolderProblem | StorageProblem | BringProblem>;

/**
 * Makes a lesson folder of an archive. Every file is unpacked beside its place under a hidden name and held against the
 * list; the folder appears once all of them are what was put in. On failure, and when stopped, nothing is left behind.
 */
export async function restoreArchive(order: RestoreOrder, job: ArchiveJob): Promise<Restored> {
  const folder = path.resolve(order.folder);
  if (!(await isFree(folder))) return fail({ code: 'restore-place-taken', path: folder });
  const archive = await openArchive(order.file);
  if (!archive.ok) return archive;
  const beside = nameTemporary(path.dirname(folder));
  try {
    return await unpackAll(archive.value, { ...order, folder, beside }, job);
  } catch (error) {
    if (job.signal.aborted) throw error;
    return fail(describeWriteError(error, folder));
  } finally {
    archive.value.close();
    await rm(beside, { recursive: true, force: true }).catch(() => {});
  }
}

/** Whether nothing stands there: no file, and no folder that holds anything. */
async function isFree(folder: string): Promise<boolean> {
  try {
    return (await readdir(folder)).length === 0;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'ENOENT';
  }
}

async function unpackAll(
  archive: OpenArchive,
  { file: archivePath, folder, beside, onlyWhole }: RestoreOrder & { readonly beside: string },
  { signal, onProgress }: ArchiveJob,
): Promise<Restored> {
  const { manifest } = archive;
  const totalBytes = manifest.files.reduce((sum, { bytes }) => sum + bytes, 0);
  await mkdir(beside, { recursive: true });
  const { bavail, bsize } = await statfs(beside);
  if (bavail * bsize < totalBytes)
    return fail({ code: 'disk-too-small', neededBytes: totalBytes, freeBytes: bavail * bsize });
  const total = manifest.files.length;
  const damaged: string[] = [];
  let doneBytes = 0;
  for (const [done, file] of manifest.files.entries()) {
    const place = path.join(beside, ...file.path.split('/'));
    await mkdir(path.dirname(place), { recursive: true });
    const onBytes = (bytes: number) => {
      doneBytes += bytes;
      onProgress({ step: 'copy', done, total, doneBytes, totalBytes });
    };
    const into = createWriteStream(place, { flags: 'wx', flush: true });
    if (await unpackFile(archive, { file, into, signal, onBytes })) {
      await utimes(place, new Date(), new Date(file.modifiedMs));
    } else {
      damaged.push(file.path);
      await rm(place, { force: true });
    }
  }
  const whole = total - damaged.length;
  const problems: ArchiveProblem[] =
    damaged.length === 0 ? [] : [{ code: 'archive-damaged', path: archivePath, files: damaged, whole }];
  if (problems.length > 0 && (!onlyWhole || damaged.includes('plan.json'))) return fail(...problems);
  await settle(beside, folder);
  return succeed({ manifest, files: whole }, problems);
}

/** An empty folder makes room first: not every system puts a folder in the place of another. */
async function settle(beside: string, folder: string): Promise<void> {
  await rmdir(folder).catch((error: NodeJS.ErrnoException) => {
    if (error.code !== 'ENOENT') throw error;
  });
  await rename(beside, folder);
  await syncFolder(path.dirname(folder));
}
