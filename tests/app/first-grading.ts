import { readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { deserialize, serialize } from 'node:v8';
import type { GradedLesson } from '../../src-core/app/graded-lesson.ts';

const place = (demo: string) => path.join(path.dirname(demo), 'first-grading.bin');

/** Keeps beside the demo how it was graded when nothing of its clips had been read before. */
export async function keepFirstGrading(demo: string, graded: GradedLesson): Promise<void> {
  await writeFile(place(demo), serialize(graded));
}

/** The grading that {@link keepFirstGrading} kept before the first test. */
export async function readFirstGrading(): Promise<GradedLesson> {
  const demo = process.env.ROUTEMARK_GRADED_DEMO;
  if (demo === undefined) throw new Error('the demo was not graded before the tests');
  return deserialize(await readFile(place(demo)));
}
