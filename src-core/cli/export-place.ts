import { readdir } from 'node:fs/promises';
import path from 'node:path';
import { describeTypedProblem } from '../../renderer/text/english/command-line-problems.ts';
import { isLessonsOwn } from '../host/lesson-own-places.ts';
import { toOneLine } from './one-line.ts';
import { PLAIN_NAMES } from './say.ts';

/** Where something is to be written, and the lesson that it must not harm. */
export interface ExportPlace {
  readonly folder: string;
  /** A file, or a folder where what is written is one. */
  readonly out: string;
  /** Folder of clips, where they are read in place. */
  readonly clips?: string;
  /** Whether what is there is written over. */
  readonly replace?: boolean;
}

/**
 * Nothing is written over a lesson's own files or among its clips, and over anything else only when that was said: what
 * to say to a place where it would; null for any other.
 */
export async function findPlaceRefusal(place: ExportPlace): Promise<string | null> {
  const refusal = await findLessonRefusal(place);
  if (refusal !== null || place.replace || !(await isTaken(place.out))) return refusal;
  const { what, todo } = describeTypedProblem({ code: 'file-exists', path: place.out }, PLAIN_NAMES);
  return toOneLine(`${what} ${todo ?? ''}`);
}

/** The same for a place of which only the lesson itself is to be kept from harm. */
export async function findLessonRefusal({ folder, out, clips }: ExportPlace): Promise<string | null> {
  const lesson = { folder, clipsFolder: clips ?? null };
  if (!(await isLessonsOwn(lesson, out))) return null;
  return `${toOneLine(out)} belongs to the lesson or lies among its clips. Write --out ${path.join('hand-in', 'sheet.csv')}, say.`;
}

/** An empty folder is free. */
async function isTaken(out: string): Promise<boolean> {
  const names = await readdir(out).catch(({ code }: NodeJS.ErrnoException) => code);
  return Array.isArray(names) ? names.length > 0 : names === 'ENOTDIR';
}
