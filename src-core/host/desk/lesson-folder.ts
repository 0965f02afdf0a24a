import { createHash } from 'node:crypto';
import { existsSync } from 'node:fs';
import { realpath } from 'node:fs/promises';
import path from 'node:path';
import type { LessonId } from '../../contract/desk-view.ts';

/** A file that stands in every demo lesson. */
const DEMO_MARK = '.routemark-demo';

/** A folder's own path, links resolved; null where there is no such folder. */
export function findRealFolder(folder: string): Promise<string | null> {
  return realpath(folder).catch(() => null);
}

/** The identity of a lesson folder on this machine, from its real path. */
export function getLessonId(realFolder: string): LessonId {
  return createHash('sha256').update(`lesson ${realFolder}`).digest('hex').slice(0, 16);
}

/** The identity of a second marking of a lesson folder, from the name of its journal. */
export function getSecondId(realFolder: string, file: string): LessonId {
  return createHash('sha256').update(`second ${file} of ${realFolder}`).digest('hex').slice(0, 16);
}

/** Whether a folder holds a plan. */
export function isLessonFolder(folder: string): boolean {
  return existsSync(path.join(folder, 'plan.json'));
}

/** Whether a folder is a demo lesson that the program filmed itself. */
export function isDemoFolder(folder: string): boolean {
  return existsSync(path.join(folder, DEMO_MARK));
}
