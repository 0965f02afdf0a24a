import { existsSync } from 'node:fs';
import { mkdir } from 'node:fs/promises';
import path from 'node:path';
import type { Problem } from '../../contract/problem.ts';
import { fail, type Outcome, succeed } from '../../platform/outcome.ts';
import { writeFileAtomically } from '../atomic-write.ts';
import { isLessonsOwn } from '../lesson-own-places.ts';
import { describeWriteError } from '../write-error.ts';
import { isPlainPath } from './inbox.ts';
import type { LessonSession } from './lesson-session.ts';

/** Where a file goes that was made from a lesson. */
export interface FilePlace {
  /** The teacher's own choice; null: `ownFolder` in the lesson, made where it is not there. */
  readonly into: string | null;
  readonly ownFolder: 'hand-in' | 'records';
  readonly fileName: string;
  /** Whether a file of that name is replaced. */
  readonly replace: boolean;
}

/**
 * The path that a file of this name and place would have. Fails where the name is none for a file, would harm the
 * lesson or lies among the clips, and where a file is there already that may not be replaced.
 */
export async function findFilePlace(
  session: LessonSession,
  { into, ownFolder, fileName, replace }: FilePlace,
): Promise<Outcome<string, Problem>> {
  if (fileName.includes('/') || !isPlainPath(fileName))
    return fail({ code: 'file-name-bad', path: fileName });
  const file = path.join(into ?? path.join(session.folder, ownFolder), fileName);
  const lesson = { folder: session.folder, clipsFolder: session.getClipsFolder() };
  if (await isLessonsOwn(lesson, file)) return fail({ code: 'file-name-bad', path: fileName });
  if (existsSync(file) && !replace) return fail({ code: 'file-exists', path: file });
  return succeed(file);
}

/** Writes a file to where {@link findFilePlace} has it. */
export async function placeFile(
  file: string,
  content: string | Uint8Array,
): Promise<Outcome<string, Problem>> {
  try {
    await mkdir(path.dirname(file), { recursive: true });
  } catch (error) {
    return fail(describeWriteError(error, path.dirname(file)));
  }
  const written = await writeFileAtomically(file, content);
  return written.ok ? succeed(file) : written;
}
