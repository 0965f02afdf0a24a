import { mkdir, stat, statfs } from 'node:fs/promises';
import path from 'node:path';
import type { BringPorts, ClipSource } from '../app/bring-clips.ts';
import { readFullHash } from './content-hash.ts';
import { copyFileVerified } from './copy-file.ts';
import { listOtherFiles } from './list-files.ts';
import { describeReadError } from './write-error.ts';

/** The folders that clips are to be brought from, listed; a clip that is named itself comes alone from its folder. */
export function listSources(named: readonly string[]): Promise<readonly ClipSource[]> {
  return Promise.all(named.map(listSource));
}

async function listSource(named: string): Promise<ClipSource> {
  const found = await stat(named).catch(() => null);
  if (!found?.isFile()) return { folder: named, listing: await listOtherFiles(named) };
  const folder = path.dirname(named);
  const name = path.basename(named);
  const file = { path: name, name, sizeBytes: found.size, modifiedMs: Math.round(found.mtimeMs) };
  return { folder, listing: { name: path.basename(folder), files: [file], problems: [] } };
}

/** The disk, for bringing clips into this lesson's folder of clips, which is made where it is not there. */
export async function openBringPorts(clipsFolder: string, signal: AbortSignal): Promise<BringPorts> {
  await mkdir(clipsFolder, { recursive: true }).catch(() => {});
  const getPath = (folder: string, relative: string) => path.join(folder, ...relative.split('/'));
  return {
    hashSource: ({ folder }, file) => readHash(getPath(folder, file.path)),
    hashClip: (relative) => readHash(getPath(clipsFolder, relative)),
    copy: ({ folder }, file, toPath) =>
      copyFileVerified(getPath(folder, file.path), getPath(clipsFolder, toPath), signal),
    freeBytes: () =>
      statfs(clipsFolder).then(
        ({ bavail, bsize }) => bavail * bsize,
        () => null,
      ),
  };
}

/** Null where the file cannot be read: it is gone, may not be opened, or its disk is worn. */
function readHash(file: string): Promise<string | null> {
  return readFullHash(file).catch((error: unknown) => {
    describeReadError(error, file);
    return null;
  });
}
