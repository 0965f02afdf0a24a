import { realpath } from 'node:fs/promises';
import path from 'node:path';
import { findLessonPart, LESSON_PARTS } from '../app/retention.ts';
import { isWithin } from './is-within.ts';

/** Where a lesson and its clips lie; any paths, links and all. */
export interface LessonPlaces {
  readonly folder: string;
  /** Null: `clips` in the lesson. */
  readonly clipsFolder: string | null;
}

/**
 * Whether a file that is made from a lesson would take the place of one of its own, lie in a folder of its records, or
 * lie among its clips, where it would be read as one.
 */
export async function isLessonsOwn({ folder, clipsFolder }: LessonPlaces, file: string): Promise<boolean> {
  const target = await locate(file);
  if (clipsFolder !== null && isWithin(target, await followFolder(path.resolve(clipsFolder)))) return true;
  const [top = ''] = path.relative(await followFolder(path.resolve(folder)), target).split(path.sep);
  const part = findLessonPart(top);
  return part !== null && LESSON_PARTS[part].holds !== 'made';
}

/** The absolute path with links followed, as far as it is there; a link at its very end would itself be replaced. */
async function locate(file: string): Promise<string> {
  const { dir, base } = path.parse(path.resolve(file));
  return path.join(await followFolder(dir), base);
}

async function followFolder(folder: string): Promise<string> {
  const real = await realpath(folder).catch(() => null);
  const parent = path.dirname(folder);
  if (real !== null || parent === folder) return real ?? folder;
  return path.join(await followFolder(parent), path.basename(folder));
}
