import { readdir } from 'node:fs/promises';
import path from 'node:path';

/** School years, terms and classes lie in one another; deeper than this nobody files lessons. */
const DEEPEST = 5;

/**
 * The folders that hold a plan, in and so many levels below these, in natural order; hidden ones are left out, links not
 * followed.
 */
export async function findLessonFolders(
  folders: readonly string[],
  levels = DEEPEST,
): Promise<readonly string[]> {
  const found = await Promise.all(folders.map((folder) => visit(path.resolve(folder), levels)));
  return [...new Set(found.flat())].sort(new Intl.Collator('en', { numeric: true }).compare);
}

/** A lesson holds no lessons; a folder that cannot be read holds none either. */
async function visit(folder: string, levels: number): Promise<readonly string[]> {
  const entries = await readdir(folder, { withFileTypes: true }).catch(() => []);
  if (entries.some((entry) => entry.name === 'plan.json' && entry.isFile())) return [folder];
  if (levels === 0) return [];
  const below = entries.filter((entry) => entry.isDirectory() && !entry.name.startsWith('.'));
  const found = await Promise.all(below.map(({ name }) => visit(path.join(folder, name), levels - 1)));
  return found.flat();
}
