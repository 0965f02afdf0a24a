import type { Dirent } from 'node:fs';
import { lstat, readdir } from 'node:fs/promises';
import path from 'node:path';
import type { FolderListing } from '../app/ports.ts';
import type { FolderProblem } from '../intake/folder-problem.ts';
import type { FoundFile } from '../intake/found-file.ts';

/** Folders below this depth are not entered: no tablet nests deeper, and a loop of mounts must end. */
const DEEPEST = 12;

const collator = new Intl.Collator('en', { numeric: true });

/**
 * Lists a folder and all below it without opening a file. Hidden files and folders are left out silently;
 * links are named and not followed; a folder that cannot be read is named and the rest is listed. A folder that
 * is not there gives an empty listing with the problem `clips-folder-missing`.
 */
export async function listFiles(folder: string): Promise<FolderListing> {
  const files: FoundFile[] = [];
  const problems: FolderProblem[] = [];
  await visitFolder({ folder, files, problems }, '', 0);
  files.sort((a, b) => collator.compare(a.path, b.path) || (a.path < b.path ? -1 : 1));
  return { name: path.basename(path.resolve(folder)), files, problems };
}

interface Scan {
  readonly folder: string;
  readonly files: FoundFile[];
  readonly problems: FolderProblem[];
}

async function visitFolder(scan: Scan, relative: string, depth: number): Promise<void> {
  for (const entry of await readFolder(scan, relative)) {
    if (!entry.name.startsWith('.')) await visitEntry(scan, entry, { relative, depth });
  }
}

async function visitEntry(
  scan: Scan,
  entry: Dirent,
  { relative, depth }: { readonly relative: string; readonly depth: number },
): Promise<void> {
  const child = relative === '' ? entry.name : `${relative}/${entry.name}`;
  if (entry.isSymbolicLink()) scan.problems.push({ code: 'link-not-followed', path: child });
  else if (entry.isFile()) await addFile(scan, child);
  else if (entry.isDirectory() && depth < DEEPEST) await visitFolder(scan, child, depth + 1);
  else if (entry.isDirectory()) scan.problems.push({ code: 'folder-too-deep', path: child });
}

/** The same of a folder that is none of the lesson's: where it is not there, the path is wrong. */
export async function listOtherFiles(folder: string): Promise<FolderListing> {
  const listing = await listFiles(folder);
  const problems = listing.problems.map((problem) =>
    problem.code === 'clips-folder-missing' ? { code: 'path-missing' as const, path: problem.path } : problem,
  );
  return { ...listing, problems };
}

async function readFolder({ folder, problems }: Scan, relative: string): Promise<Dirent[]> {
  try {
    return await readdir(path.join(folder, relative), { withFileTypes: true });
  } catch (error) {
    const missing = (error as NodeJS.ErrnoException).code === 'ENOENT' && relative === '';
    problems.push({
      code: missing ? 'clips-folder-missing' : 'folder-unreadable',
      path: relative || folder,
    });
    return [];
  }
}

async function addFile({ folder, files, problems }: Scan, relative: string): Promise<void> {
  const name = path.basename(relative);
  try {
    const { size, mtimeMs } = await lstat(path.join(folder, relative));
    files.push({ path: relative, name, sizeBytes: size, modifiedMs: Math.round(mtimeMs) });
  } catch {
    problems.push({ code: 'file-vanished', path: relative });
  }
}
