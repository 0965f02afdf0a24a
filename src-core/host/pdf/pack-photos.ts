import path from 'node:path';
import type { PackSection } from '../../printing/pack.ts';
import type { PrintProblem } from '../../printing/print-problem.ts';
import type { AnswerKey } from '../../printing/teacher-sheets.ts';
import { mapAll } from '../map-all.ts';
import { readPhoto } from '../media/still.ts';
import { findAspect } from './draw-pages.ts';
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
  const read = await mapAll(wanted, async ({ photo }) => {
    const jpeg = await readPhoto(path.resolve(lessonFolder, photo), HEIGHT);
    const aspect = jpeg && findAspect(jpeg);
    return aspect === null ? null : { photo, jpegs: [jpeg], aspect };
  });
  const found = read.filter((one) => one !== null);
  const ready = await retouchStills(found, { isBlurred: false, isGrey });
  const photos = new Map(
    found.flatMap(({ photo, aspect }, at) => {
      const jpeg = ready[at]?.jpegs[0];
      return jpeg ? [[photo, { jpeg, aspect }] as const] : [];
    }),
  );
  return {
    photos,
    problems: wanted
      .filter(({ photo }) => !photos.has(photo))
      .map(({ code, photo }) => ({ code: 'print-photo-missing', station: code, path: photo })),
  };
}
