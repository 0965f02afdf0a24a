import { open, rename, rm, stat } from 'node:fs/promises';
import path from 'node:path';
import { fail, type Outcome, succeed } from '../platform/outcome.ts';
import type { StorageProblem } from '../platform/storage-problem.ts';
import { syncFolder } from './sync-folder.ts';
import { nameTemporary } from './temporary-file.ts';
import { describeWriteError } from './write-error.ts';

/**
 * Writes a whole file so that at every moment, a power cut included, either the old or the new content stands there:
 * a temporary name in the same folder, sync, rename, sync of the folder. Text is written as UTF-8. On failure the
 * old file is untouched and the temporary one is removed. The value is the number of bytes written.
 */
export async function writeFileAtomically(
  file: string,
  content: string | Uint8Array,
): Promise<Outcome<number, StorageProblem>> {
  const folder = path.dirname(file);
  const temporary = nameTemporary(folder);
  const bytes = typeof content === 'string' ? Buffer.from(content, 'utf8') : content;
  try {
    await writeSynced(temporary, bytes, await findMode(file));
    await rename(temporary, file);
    await syncFolder(folder);
    return succeed(bytes.byteLength);
  } catch (error) {
    await rm(temporary, { force: true }).catch(() => {});
    return fail(describeWriteError(error, file));
  }
}

async function writeSynced(file: string, bytes: Uint8Array, mode: number | null): Promise<void> {
  const handle = await open(file, 'wx', mode ?? 0o666);
  try {
    if (mode !== null) await handle.chmod(mode);
    await handle.writeFile(bytes);
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** The permissions of the file to be replaced, or null where there is none. */
async function findMode(file: string): Promise<number | null> {
  try {
    return (await stat(file)).mode & 0o777;
  } catch {
    return null;
  }
}
