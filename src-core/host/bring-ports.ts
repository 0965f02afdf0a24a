import { mkdir, statfs } from 'node:fs/promises';
import path from 'node:path';
import type { BringPorts, ClipSource } from '../app/bring-clips.ts';
import { readFullHash } from './content-hash.ts';
import { copyFileVerified } from './copy-file.ts';
import { listFiles } from './list-files.ts';

/** The folders that clips are to be brought from, listed. */
export function listSources(folders: readonly string[]): Promise<readonly ClipSource[]> {
  return Promise.all(folders.map(async (folder) => ({ folder, listing: await listFiles(folder) })));
}

/** The disk, for bringing clips into this lesson's folder of clips, which is made where it is not there. */
export async function openBringPorts(clipsFolder: string, signal: AbortSignal): Promise<BringPorts> {
  await mkdir(clipsFolder, { recursive: true }).catch(() => {});
  const getPath = (folder: string, relative: string) => path.join(folder, ...relative.split('/'));
  return {
    hashSource: ({ folder }, file) => readFullHash(getPath(folder, file.path)),
    hashClip: (relative) => readFullHash(getPath(clipsFolder, relative)),
    copy: ({ folder }, file, toPath) =>
      copyFileVerified(getPath(folder, file.path), getPath(clipsFolder, toPath), signal),
    freeBytes: () =>
      statfs(clipsFolder).then(
        ({ bavail, bsize }) => bavail * bsize,
        () => null,
      ),
  };
}
