import { mkdir, readFile, rm } from 'node:fs/promises';
import path from 'node:path';
import { BUILT_IN_EXERCISES, buildLibraryText, mergeLibraries, parseLibrary } from '../app/plan-lesson.ts';
import type { LibraryExercise, ShelvedExercise } from '../lesson/library/library.ts';
import type { LibraryProblem } from '../lesson/planning-problem.ts';
import { fail, type Outcome, succeed } from '../platform/outcome.ts';
import type { StorageProblem } from '../platform/storage-problem.ts';
import { writeFileAtomically } from './atomic-write.ts';
import { describeWriteError } from './write-error.ts';

type Shelf = Outcome<readonly ShelvedExercise[], LibraryProblem | StorageProblem>;

const getFile = (home: string) => path.join(home, 'exercises.json');

/** The exercises of the program and the teacher's own; an own file that cannot be read is named and left out. */
export async function readExercises(home: string): Promise<Shelf> {
  const text = await readFile(getFile(home), 'utf8').catch(() => null);
  const own = text === null ? succeed<readonly LibraryExercise[], LibraryProblem>([]) : parseLibrary(text);
  return succeed<readonly ShelvedExercise[], LibraryProblem>(
    mergeLibraries(BUILT_IN_EXERCISES, own.ok ? own.value : []),
    own.problems,
  );
}

/** Takes a library over as the teacher's own, in the place of the one before; empty text takes it away. */
export async function takeExercises(home: string, text: string): Promise<Shelf> {
  try {
    await mkdir(home, { recursive: true });
    if (text.trim() === '') {
      await rm(getFile(home), { force: true });
      return readExercises(home);
    }
  } catch (error) {
    return fail(describeWriteError(error, home));
  }
  const own = parseLibrary(text);
  if (!own.ok) return own;
  const written = await writeFileAtomically(getFile(home), buildLibraryText(own.value));
  return written.ok ? readExercises(home) : written;
}
