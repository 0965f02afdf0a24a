import { stat } from 'node:fs/promises';
import path from 'node:path';
import type { Plan } from '../lesson/plan.ts';
import type { PrintProblem } from '../printing/print-problem.ts';
import { mapAll } from './map-all.ts';

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
