import { readdir } from 'node:fs/promises';
import path from 'node:path';
import { isLessonFolder } from './desk/lesson-folder.ts';

/** Folders below this depth are not searched: a school sorts its lessons by year, class and week at the most. */
const DEEPEST = 5;

/**
 * The lesson folders at or below a folder, in natural order; empty where there is none. Hidden folders, links and the
 * inside of lessons are not entered.
 */
export async function findLessons(folder: string, depth = 0): Promise<readonly string[]> {
  if (isLessonFolder(folder)) return [folder];
  if (depth === DEEPEST) return [];
  const entries = await readdir(folder, { withFileTypes: true }).catch(() => []);
  const inner = entries
    .filter((entry) => entry.isDirectory() && !entry.name.startsWith('.'))
    .map(({ name }) => name)
    .sort(new Intl.Collator('en', { numeric: true }).compare);
  return (await Promise.all(inner.map((name) => findLessons(path.join(folder, name), depth + 1)))).flat();
}
