import { createHash } from 'node:crypto';
import { lstat, readdir, rm, rmdir } from 'node:fs/promises';
import path from 'node:path';
import { findLessonPart, type LessonPart, listLessonParts } from '../app/retention.ts';
import type { HeldFile, HoldingScope, Holdings } from '../lesson-file/deletion-log.ts';
import type { StorageProblem } from '../platform/storage-problem.ts';
import { logDeletion } from './keeping-files.ts';
import { isTemporary } from './temporary-file.ts';
import { describeWriteError } from './write-error.ts';

/** What a lesson is opened by goes last, and only once all else went: what is left can then be deleted from here. */
const LAST_PARTS: readonly (LessonPart | null)[] = ['roster.csv', 'plan.json'];

/** Lists what a deletion would take, hidden files included. Links are named and left alone with what they lead to. */
export async function listHoldings(folder: string, scope: HoldingScope): Promise<Holdings> {
  const parts: readonly (LessonPart | null)[] =
    scope === 'all' ? listLessonParts('films', 'records', 'made') : listLessonParts('films');
  const listing: Listing = { folder, files: [], links: [], hash: createHash('sha256').update(scope) };
  const names = (await readdir(folder)).sort();
  for (const name of names) {
    if (parts.includes(findLessonPart(name)) || isTemporary(name)) await visit(listing, name);
  }
  const strangers = names.filter((name) => findLessonPart(name) === null && !isTemporary(name));
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

async function visit(listing: Listing, relative: string): Promise<void> {
  const place = path.join(listing.folder, relative);
  const found = await lstat(place);
  if (found.isSymbolicLink()) listing.links.push(relative);
  else if (found.isDirectory()) {
    for (const name of (await readdir(place)).sort()) await visit(listing, `${relative}/${name}`);
  } else {
    listing.files.push({ path: relative, bytes: found.size });
    // A cache may be written at any moment, from films that are on the list themselves.
    if (findLessonPart(relative.split('/')[0] ?? '') !== 'evidence')
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
 * Deletes what was listed, file by file, and the folders that are empty then; plan.json goes only where all else did.
 * deletions.jsonl says first what is to go and then what went: when, who, how many files and bytes, and nothing of what
 * was in them. Where it cannot be written nothing is deleted, unless the disk is full, which a deletion mends.
 */
export async function deleteHoldings(
  folder: string,
  order: { readonly scope: HoldingScope; readonly holdings: Holdings; readonly stamp: DeletionStamp },
): Promise<Deletion> {
  const { holdings, stamp, scope } = order;
  const log = (count: Counted, extra: { readonly isBegun?: true } = {}) =>
    logDeletion(folder, { at: stamp.at, who: stamp.who, what: scope, ...count, ...extra });
  const begun = await log(addUp(holdings.files), { isBegun: true });
  if (!begun.ok && begun.problems.some(({ code }) => code !== 'disk-full'))
    return { files: 0, bytes: 0, problems: begun.problems };
  const { gone, problems } = await deleteFiles(folder, holdings.files);
  await removeEmptyFolders(folder, gone);
  const ended = await log(addUp(gone));
  return { ...addUp(gone), problems: [...problems, ...ended.problems] };
}

async function deleteFiles(
  folder: string,
  files: readonly HeldFile[],
): Promise<{ readonly gone: readonly HeldFile[]; readonly problems: readonly StorageProblem[] }> {
  const gone: HeldFile[] = [];
  const problems: StorageProblem[] = [];
  const rank = (file: HeldFile) => LAST_PARTS.indexOf(findLessonPart(file.path));
  for (const file of [...files].sort((one, other) => rank(one) - rank(other))) {
    if (problems.length > 0 && rank(file) >= 0) break;
    try {
      await rm(path.join(folder, file.path));
      gone.push(file);
    } catch (error) {
      problems.push(describeWriteError(error, file.path));
    }
  }
  return { gone, problems };
}

type Counted = Pick<Deletion, 'files' | 'bytes'>;

function addUp(files: readonly HeldFile[]): Counted {
  return { files: files.length, bytes: files.reduce((sum, { bytes }) => sum + bytes, 0) };
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
