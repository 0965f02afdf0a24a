import { createHash } from 'node:crypto';
import { appendFile, lstat, readdir, rm, rmdir } from 'node:fs/promises';
import path from 'node:path';
import type { HeldFile, HoldingScope, Holdings } from '../lesson-file/deletion-log.ts';
import type { StorageProblem } from '../platform/storage-problem.ts';
import { describeWriteError } from './write-error.ts';

/** Clips, and what was cut or read from them: stills, films for the window, caches. */
const FILM_PARTS = ['clips', 'evidence'];

/** What was planned and decided, and what was written from it: sheets, records and paper have names on them. */
const RECORD_PARTS = [
  'plan.json',
  'photos',
  'versions',
  'roster.csv',
  'marks.jsonl',
  'second-marks',
  'keeping.json',
  'hand-in',
  'records',
  'print',
  'summary.json',
];

const LOG_FILE = 'deletions.jsonl';

/** Lists what a deletion would take, hidden files included. Links are named and left alone with what they lead to. */
export async function listHoldings(folder: string, scope: HoldingScope): Promise<Holdings> {
  const parts = scope === 'all' ? [...FILM_PARTS, ...RECORD_PARTS] : FILM_PARTS;
  const listing: Listing = { folder, files: [], links: [], hash: createHash('sha256').update(scope) };
  const names = (await readdir(folder)).sort();
  for (const name of names) if (parts.includes(name) || isLeftover(name)) await visit(listing, name);
  const known = [...FILM_PARTS, ...RECORD_PARTS, LOG_FILE];
  const strangers = names.filter((name) => !known.includes(name) && !isLeftover(name));
  return {
    files: listing.files,
    leftAlone: [...listing.links, ...strangers],
    code: listing.hash.digest('hex').slice(0, 8),
  };
}

interface Listing {
  readonly folder: string;
  readonly files: HeldFile[];
  readonly links: string[];
  readonly hash: ReturnType<typeof createHash>;
}

/** What a write leaves behind that was cut off by a power failure. */
function isLeftover(name: string): boolean {
  return /^\.routemark-.*\.tmp$/.test(name);
}

async function visit(listing: Listing, relative: string): Promise<void> {
  const place = path.join(listing.folder, relative);
  const found = await lstat(place);
  if (found.isSymbolicLink()) listing.links.push(relative);
  else if (found.isDirectory()) {
    for (const name of (await readdir(place)).sort()) await visit(listing, `${relative}/${name}`);
  } else {
    listing.files.push({ path: relative, bytes: found.size });
    // A cache may be written at any moment, from films that are on the list themselves.
    if (!relative.startsWith('evidence/'))
      listing.hash.update(`\n${relative}\n${found.size}\n${found.mtimeMs}`);
  }
}

/** What became of a deletion. */
export interface Deletion {
  readonly files: number;
  readonly bytes: number;
  readonly problems: readonly StorageProblem[];
}

/** Who deletes, and when: ISO 8601 in UTC. */
export interface DeletionStamp {
  readonly who: string;
  readonly at: string;
}

/**
 * Deletes what was listed, file by file, and the folders that are empty then. A line in deletions.jsonl says when, who,
 * how many files and bytes, and nothing of what was in them.
 */
export async function deleteHoldings(
  folder: string,
  order: { readonly scope: HoldingScope; readonly holdings: Holdings; readonly stamp: DeletionStamp },
): Promise<Deletion> {
  const gone: HeldFile[] = [];
  const problems: StorageProblem[] = [];
  for (const file of order.holdings.files) {
    try {
      await rm(path.join(folder, file.path));
      gone.push(file);
    } catch (error) {
      problems.push(describeWriteError(error, file.path));
    }
  }
  await removeEmptyFolders(folder, gone);
  const files = gone.length;
  const bytes = gone.reduce((sum, file) => sum + file.bytes, 0);
  const { at, who } = order.stamp;
  const line = JSON.stringify({ at, who, what: order.scope, files, bytes });
  try {
    await appendFile(path.join(folder, LOG_FILE), `${line}\n`);
  } catch (error) {
    problems.push(describeWriteError(error, LOG_FILE));
  }
  return { files, bytes, problems };
}

/** Deepest first; one that still holds something stays. */
async function removeEmptyFolders(folder: string, gone: readonly HeldFile[]): Promise<void> {
  const folders = new Set<string>();
  for (const file of gone) {
    for (let at = path.posix.dirname(file.path); at !== '.'; at = path.posix.dirname(at)) folders.add(at);
  }
  const deepest = [...folders].sort((one, other) => other.length - one.length);
  for (const name of deepest) await rmdir(path.join(folder, name)).catch(() => {});
}
