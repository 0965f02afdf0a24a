import { createHash } from 'node:crypto';
import { createReadStream, createWriteStream } from 'node:fs';
import { mkdir, open, rename, rm, stat, utimes } from 'node:fs/promises';
import path from 'node:path';
import { Transform } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { UnreadableFile } from '../intake/folder-problem.ts';
import { fail, type Outcome, succeed } from '../platform/outcome.ts';
import type { StorageProblem } from '../platform/storage-problem.ts';
import { readFullHash } from './content-hash.ts';
import { syncFolder } from './sync-folder.ts';
import { abandon, isThere, nameTemporary } from './temporary-file.ts';
import { describeWriteError } from './write-error.ts';

/**
 * Copies a file under a temporary name, reads the copy back, compares it with what was read, keeps the file's
 * date, and only then gives it its name. Folders on the way are made. A file that stands there already is not
 * replaced. On failure nothing is left behind; `file-unreadable` names the file that was to be copied.
 */
export async function copyFileVerified(
  from: string,
  to: string,
  signal: AbortSignal,
): Promise<Outcome<null, StorageProblem | UnreadableFile>> {
  const folder = path.dirname(to);
  const temporary = nameTemporary(folder);
  try {
    await mkdir(folder, { recursive: true });
    const { atime, mtime } = await stat(from);
    const hash = await copyHashed(from, temporary, signal);
    if ((await readFullHash(temporary)) !== hash) {
      return await abandon(temporary, { code: 'copy-differs', path: to, cause: 'READ-BACK' });
    }
    await utimes(temporary, atime, mtime);
    if (await isThere(to))
      return await abandon(temporary, { code: 'not-writable', path: to, cause: 'EEXIST' });
    await rename(temporary, to);
    await syncFolder(folder);
    return succeed(null);
  } catch (error) {
    await rm(temporary, { force: true }).catch(() => {});
    if (signal.aborted) throw error;
    if (isOfSource(error, from)) return fail({ code: 'file-unreadable', path: from });
    return fail(describeWriteError(error, to));
  }
}

/** It is not there any more, may not be opened, or the disk that it lies on is worn. */
function isOfSource(error: unknown, from: string): boolean {
  const { path: place, syscall } = error as NodeJS.ErrnoException;
  return place === from || syscall === 'read';
}

/** Copies and syncs; the value is the hash of what was read, as {@link readFullHash} gives it. */
async function copyHashed(from: string, to: string, signal: AbortSignal): Promise<string> {
  const hash = createHash('sha256');
  const tap = new Transform({
    transform(chunk: Buffer, _, done) {
      hash.update(chunk);
      done(null, chunk);
    },
  });
  await pipeline(createReadStream(from), tap, createWriteStream(to, { flags: 'wx' }), { signal });
  const handle = await open(to, 'r+');
  await handle.sync().finally(() => handle.close());
  return hash.digest('hex').slice(0, 32);
}
