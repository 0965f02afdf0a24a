import { stat } from 'node:fs/promises';
import path from 'node:path';
import type { FolderProblem } from '../intake/folder-problem.ts';
import type { FoundFile } from '../intake/found-file.ts';
import { readFullHash } from './content-hash.ts';
import { listFiles, listOtherFiles } from './list-files.ts';

/** A tablet's files by whether the lesson has them. */
export interface TabletComparison {
  /** The lesson has a file of the same content, compared byte for byte by its hash just now. */
  readonly safe: readonly FoundFile[];
  /** The lesson lacks them, or they could not be read. */
  readonly missing: readonly FoundFile[];
  readonly problems: readonly FolderProblem[];
}

/** How a comparison is stopped and seen. */
export interface ComparisonJob {
  readonly signal: AbortSignal;
  /** Told before each of the tablet's files. */
  readonly onFile?: (done: number, total: number) => void;
}

/**
 * Compares a tablet's folder with the lesson's clips by whole content, whatever the files are called. Reads alone:
 * what may be deleted on a tablet is a list for a person. Stops at the signal, with its reason.
 */
export async function compareTablet(
  tabletFolder: string,
  clipsFolder: string,
  { signal, onFile }: ComparisonJob,
): Promise<TabletComparison> {
  const [tablet, clips] = [await listOtherFiles(tabletFolder), await listFiles(clipsFolder)];
  const readHash = rememberHashes(signal);
  const safe: FoundFile[] = [];
  for (const [done, file] of tablet.files.entries()) {
    onFile?.(done, tablet.files.length);
    const own = path.join(tabletFolder, file.path);
    const alike = clips.files
      .filter(({ sizeBytes }) => sizeBytes === file.sizeBytes)
      .map((clip) => path.join(clipsFolder, clip.path));
    if (await hasCopy(own, alike, readHash)) safe.push(file);
  }
  const missing = tablet.files.filter((file) => !safe.includes(file));
  return { safe, missing, problems: tablet.problems };
}

type ReadHash = (file: string) => Promise<string | null>;

function rememberHashes(signal: AbortSignal): ReadHash {
  const hashes = new Map<string, Promise<string | null>>();
  return (file) => {
    signal.throwIfAborted();
    const hash = hashes.get(file) ?? readFullHash(file).catch(() => null);
    hashes.set(file, hash);
    return hash;
  };
}

/** A file that is one of the lesson's own, under whatever name or link, is none that may be deleted. */
async function hasCopy(file: string, alike: readonly string[], readHash: ReadHash): Promise<boolean> {
  for (const clip of alike) if (await isSameFile(file, clip)) return false;
  for (const clip of alike) {
    const hash = await readHash(file);
    if (hash !== null && (await readHash(clip)) === hash) return true;
  }
  return false;
}

async function isSameFile(one: string, other: string): Promise<boolean> {
  const [a, b] = await Promise.all(
    [one, other].map((file) => stat(file, { bigint: true }).catch(() => null)),
  );
  if (!a || !b) return true;
  return a.dev === b.dev && a.ino === b.ino;
}
