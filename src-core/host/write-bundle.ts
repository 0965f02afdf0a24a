import { mkdir, readdir } from 'node:fs/promises';
import path from 'node:path';
import { strToU8, zipSync } from 'fflate';
import { fail, type Outcome, succeed } from '../platform/outcome.ts';
import type { StorageProblem } from '../platform/storage-problem.ts';
import { writeFileAtomically } from './atomic-write.ts';
import { describeWriteError } from './write-error.ts';

/** The same for every archive, so that the same marks give the same bytes: the first day that zip knows, and a bit. */
const PACKED_AT = new Date(1980, 0, 2);

/** Files of a set by name. */
type SetFiles = ReadonlyMap<string, string>;

/**
 * Writes a set of OneRoster files: an archive, all files at its root, where the name ends in `.zip`; else a folder,
 * made where it is not there. Fails with `is-a-folder` where the folder holds other files: a set of before would
 * mix with this one.
 */
export async function writeBundle(place: string, files: SetFiles): Promise<Outcome<number, StorageProblem>> {
  return place.endsWith('.zip')
    ? writeFileAtomically(place, buildBundleArchive(files))
    : writeFolder(place, files);
}

/** The set as the bytes of a zip archive, all files at its root. */
export function buildBundleArchive(files: SetFiles): Uint8Array {
  const entries = Object.fromEntries([...files].map(([name, text]) => [name, strToU8(text)]));
  return zipSync(entries, { mtime: PACKED_AT });
}

async function writeFolder(place: string, files: SetFiles): Promise<Outcome<number, StorageProblem>> {
  try {
    await mkdir(place, { recursive: true });
    const others = (await readdir(place)).filter((name) => !name.startsWith('.') && !files.has(name));
    if (others.length > 0) return fail({ code: 'is-a-folder', path: place, cause: 'ENOTEMPTY' });
  } catch (error) {
    return fail(describeWriteError(error, place));
  }
  let bytes = 0;
  for (const [name, text] of files) {
    const written = await writeFileAtomically(path.join(place, name), text);
    if (!written.ok) return written;
    bytes += written.value;
  }
  return succeed(bytes);
}
