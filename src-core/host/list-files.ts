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
  const visit = async (relative: string, depth: number): Promise<void> => {
    const entries = await readFolder(folder, relative, problems);
    for (const entry of entries) {
      const child = relative === '' ? entry.name : `${relative}/${entry.name}`;
      if (entry.isSymbolicLink()) problems.push({ code: 'link-not-followed', path: child });
      else if (entry.isDirectory() && !entry.name.startsWith('.')) {
        if (depth < DEEPEST) await visit(child, depth + 1);
        else problems.push({ code: 'folder-too-deep', path: child });
      } else if (entry.isFile()) await addFile(folder, child, { files, problems });
    }
  };
  await visit('', 0);
  files.sort((a, b) => collator.compare(a.path, b.path) || (a.path < b.path ? -1 : 1));
  return { name: path.basename(path.resolve(folder)), files, problems };
}

async function readFolder(folder: string, relative: string, problems: FolderProblem[]): Promise<Dirent[]> {
  try {
    return await readdir(path.join(folder, relative), { withFileTypes: true });
  } catch (error) {
    const missing = (error as NodeJS.ErrnoException).code === 'ENOENT' && relative === '';
    problems.push({ code: missing ? 'clips-folder-missing' : 'folder-unreadable', path: relative || folder });
    return [];
  }
}

async function addFile(
  folder: string,
  relative: string,
  found: { files: FoundFile[]; problems: FolderProblem[] },
): Promise<void> {
  const name = path.basename(relative);
  if (name.startsWith('.')) return;
  try {
    const { size, mtimeMs } = await lstat(path.join(folder, relative));
    found.files.push({ path: relative, name, sizeBytes: size, modifiedMs: Math.round(mtimeMs) });
  } catch {
    found.problems.push({ code: 'file-vanished', path: relative });
  }
}
