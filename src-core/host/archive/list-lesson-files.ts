import { lstat, readdir } from 'node:fs/promises';
import path from 'node:path';
import { type ArchiveProblem, isSafePath, MANIFEST_NAME } from '../../app/archive.ts';
import { findLessonPart } from '../../app/retention.ts';
import { isTemporary } from '../temporary-file.ts';

/** One file of a lesson, as it goes into an archive. */
export interface LessonFile {
  /** Below the lesson folder, with `/` between the parts. */
  readonly path: string;
  readonly bytes: number;
  readonly modifiedMs: number;
}

/** What of a lesson goes into an archive. */
export interface LessonFiles {
  readonly files: readonly LessonFile[];
  /** Links, and names that no archive can hold. */
  readonly problems: readonly ArchiveProblem[];
}

/** Films: made again from the clips when they are wanted, and with `clips` what "without clips" leaves out. */
const PROXIES = 'evidence/proxies';

/** Left by an upload that was cut off. */
const INBOX = /^\.inbox-[0-9a-f]{8}$/;

/**
 * Everything that lies in a lesson folder, the teacher's own files too: a lesson that moves loses nothing. Left out are
 * films for the window, leftovers, links, the list of an archive that was unpacked by hand, and without clips the folder
 * of clips.
 */
export async function listLessonFiles(folder: string, withClips: boolean): Promise<LessonFiles> {
  const isLeftOut = (file: string) =>
    [PROXIES, MANIFEST_NAME].includes(file.toLowerCase()) || (!withClips && isClip(file));
  const listing: Listing = { folder, isLeftOut, files: [], problems: [] };
  await visit(listing, '');
  return listing;
}

/** Whether a path of the lesson is its folder of clips, whatever its capitals, or lies in it. */
export function isClip(file: string): boolean {
  return findLessonPart(file.split('/')[0] ?? '') === 'clips';
}

interface Listing {
  readonly folder: string;
  /** Paths that are passed over without a word. */
  readonly isLeftOut: (file: string) => boolean;
  readonly files: LessonFile[];
  readonly problems: ArchiveProblem[];
}

async function visit(listing: Listing, relative: string): Promise<void> {
  const names = (await readdir(path.join(listing.folder, relative))).sort();
  for (const name of names) {
    const child = relative === '' ? name : `${relative}/${name}`;
    if (!isTemporary(name) && !INBOX.test(name) && !listing.isLeftOut(child)) await add(listing, child);
  }
}

async function add(listing: Listing, child: string): Promise<void> {
  const found = await lstat(path.join(listing.folder, child));
  const { files, problems } = listing;
  if (!isSafePath(child)) problems.push({ code: 'archive-left-out', path: child, why: 'name' });
  else if (found.isDirectory()) await visit(listing, child);
  else if (!found.isFile()) problems.push({ code: 'archive-left-out', path: child, why: 'link' });
  else files.push({ path: child, bytes: found.size, modifiedMs: Math.round(found.mtimeMs) });
}
