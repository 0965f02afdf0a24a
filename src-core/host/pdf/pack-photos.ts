import { stat } from 'node:fs/promises';
import path from 'node:path';
import type { Plan } from '../../lesson/plan.ts';
import type { PackSection } from '../../printing/pack.ts';
import type { PrintProblem } from '../../printing/print-problem.ts';
import type { AnswerKey } from '../../printing/teacher-sheets.ts';
import { mapAll } from '../map-all.ts';
import { readPhoto } from '../media/still.ts';
import { readAspect } from './draw-pages.ts';
import { retouchStills } from './retouch-stills.ts';

/** Pictures of places as they are printed, by their path below the lesson folder. */
export type PackPhotos = ReadonlyMap<string, { readonly jpeg: Uint8Array; readonly aspect: number }>;

/** Pixels: 13 mm of paper at 400 dots an inch, and some. */
const HEIGHT = 216;

/** The reference photos that a pack shows; one that is not there or is no picture is a problem, and its page stays. */
export async function readPackPhotos(
  sections: readonly PackSection[],
  { lessonFolder, isGrey }: { readonly lessonFolder: string; readonly isGrey: boolean },
): Promise<{ readonly photos: PackPhotos; readonly problems: readonly PrintProblem[] }> {
  const wanted = sections
    .flatMap(({ pages }) => pages)
    .filter((page): page is AnswerKey => page.kind === 'answer-key')
    .flatMap(({ stations }) => stations.flatMap(({ code, photo }) => (photo ? [{ code, photo }] : [])));
  const plain = await mapAll(wanted, async ({ photo }) => {
    const jpeg = await readPhoto(path.resolve(lessonFolder, photo), HEIGHT);
    return { jpegs: [jpeg], aspect: jpeg ? readAspect(jpeg) : 1 };
  });
  const read = plain.filter(({ jpegs }) => jpegs[0]);
  const ready = await retouchStills(read, { isBlurred: false, isGrey });
  const photos = new Map<string, { jpeg: Uint8Array; aspect: number }>();
  wanted.forEach(({ photo }, at) => {
    const { jpegs: [jpeg] = [], aspect = 1 } =
      ready[read.indexOf(plain[at] ?? { jpegs: [], aspect: 1 })] ?? {};
    if (jpeg) photos.set(photo, { jpeg, aspect });
  });
  return {
    photos,
    problems: wanted
      .filter(({ photo }) => !photos.has(photo))
      .map(({ code, photo }) => ({ code: 'print-photo-missing', station: code, path: photo })),
  };
}

/** Reference photos that the plan names and the lesson folder does not have. */
export async function findMissingPhotos(
  { stations }: Plan,
  lessonFolder: string,
): Promise<readonly PrintProblem[]> {
  const found = await mapAll(stations, async ({ code, photo }): Promise<PrintProblem | null> => {
    if (photo === undefined) return null;
    const file = await stat(path.join(lessonFolder, photo)).catch(() => null);
    return file?.isFile() ? null : { code: 'print-photo-missing', station: code, path: photo };
  });
  return found.filter((problem) => problem !== null);
}
