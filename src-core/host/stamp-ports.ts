import { stat } from 'node:fs/promises';
import path from 'node:path';
import type { StampPorts } from '../app/read-stamps.ts';
import type { FolderProblem } from '../intake/folder-problem.ts';
import type { FoundFile } from '../intake/found-file.ts';
import { readMedia } from '../media/read-media.ts';
import { withFileBytes } from './file-byte-source.ts';
import { listFiles } from './list-files.ts';
import { mapAll } from './map-all.ts';

/** The files that paths mean: those named themselves, and those found below the folders named. */
export interface NamedFiles {
  readonly named: readonly FoundFile[];
  readonly found: readonly FoundFile[];
  readonly problems: readonly FolderProblem[];
}

/**
 * Looks at each path without opening a file. Paths stay as they were written; a link named itself is followed. Pipes
 * and devices, which may never end, are `file-unreadable`.
 */
export async function findFiles(paths: readonly string[]): Promise<NamedFiles> {
  const named: FoundFile[] = [];
  const found: FoundFile[] = [];
  const problems: FolderProblem[] = [];
  for (const given of paths) {
    const stats = await stat(given).catch(() => null);
    if (!stats) problems.push({ code: 'path-missing', path: given });
    else if (stats.isDirectory()) {
      const listing = await listFiles(given);
      found.push(...listing.files.map((file) => ({ ...file, path: path.join(given, file.path) })));
      problems.push(...listing.problems);
    } else if (!stats.isFile()) problems.push({ code: 'file-unreadable', path: given });
    else {
      const modifiedMs = Math.round(stats.mtimeMs);
      named.push({ path: given, name: path.basename(given), sizeBytes: stats.size, modifiedMs });
    }
  }
  return { named, found, problems };
}

/** Reads files of any lesson or none, paths as `findFiles` gives them. */
export function openStampPorts(zone: string | null): StampPorts {
  return {
    zone,
    nowMs: Date.now(),
    readFacts: async (filePath) => {
      try {
        return await withFileBytes(filePath, readMedia);
      } catch (error) {
        if ((error as NodeJS.ErrnoException).syscall !== undefined) return null;
        throw error;
      }
    },
    mapAll,
  };
}
