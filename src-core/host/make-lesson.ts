import { copyFile, mkdir, readdir, rm } from 'node:fs/promises';
import path from 'node:path';
import { buildPlanText } from '../app/edit-plan.ts';
import type { Plan } from '../lesson/plan.ts';
import type { LessonCopyProblem } from '../lesson/planning-problem.ts';
import { fail, type Outcome, succeed } from '../platform/outcome.ts';
import type { StorageProblem } from '../platform/storage-problem.ts';
import { writeFileAtomically } from './atomic-write.ts';
import { describeWriteError } from './write-error.ts';

/** What a new lesson folder is to hold. */
export interface LessonContents {
  readonly plan: Plan;
  /** roster.csv's text. */
  readonly roster: string;
  /** A lesson whose `photos` are copied; null: none. */
  readonly photosFrom: string | null;
}

type Made = Outcome<null, LessonCopyProblem | StorageProblem>;

/** Makes a lesson folder that is not there yet; one that cannot be made whole is taken away again. */
export async function makeLesson(folder: string, contents: LessonContents): Promise<Made> {
  try {
    await mkdir(folder);
  } catch (error) {
    const isThere = (error as NodeJS.ErrnoException).code === 'EEXIST';
    return fail(isThere ? { code: 'lesson-folder-exists', path: folder } : describeWriteError(error, folder));
  }
  const filled = await fill(folder, contents);
  if (!filled.ok) await rm(folder, { recursive: true, force: true }).catch(() => {});
  return filled;
}

async function fill(folder: string, { plan, roster, photosFrom }: LessonContents): Promise<Made> {
  try {
    await mkdir(path.join(folder, 'clips'));
    if (photosFrom !== null) await copyPhotos(path.join(photosFrom, 'photos'), path.join(folder, 'photos'));
  } catch (error) {
    return fail(describeWriteError(error, folder));
  }
  const written = await writeFileAtomically(path.join(folder, 'roster.csv'), roster);
  if (!written.ok) return written;
  const planned = await writeFileAtomically(path.join(folder, 'plan.json'), buildPlanText(plan));
  return planned.ok ? succeed(null) : planned;
}

async function copyPhotos(from: string, to: string): Promise<void> {
  const entries = await readdir(from, { withFileTypes: true }).catch(() => []);
  const names = entries.filter((entry) => entry.isFile()).map(({ name }) => name);
  if (names.length > 0) await mkdir(to);
  for (const name of names) await copyFile(path.join(from, name), path.join(to, name));
}
