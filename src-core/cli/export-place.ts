import { realpath } from 'node:fs/promises';
import path from 'node:path';
import { toOneLine } from './one-line.ts';

const OWN_FILES = ['plan.json', 'roster.csv', 'marks.jsonl', 'keeping.json', 'deletions.jsonl'] as const;

/** Where something is to be written, and the lesson that it must not harm. */
export interface ExportPlace {
  readonly folder: string;
  readonly out: string;
  /** Folder of clips, where they are read in place. */
  readonly clips?: string;
}

/**
 * A lesson's own files and the clips are never written over, however the name of the sheet came about: what to say
 * to a place that would do so; null for any other.
 */
export async function findPlaceRefusal({ folder, out, clips }: ExportPlace): Promise<string | null> {
  const target = await locate(out);
  const folders = await Promise.all(
    [clips ?? path.join(folder, 'clips'), path.join(folder, 'second-marks')].map((one) =>
      locate(path.join(one, 'any')),
    ),
  );
  const own = await Promise.all(OWN_FILES.map((name) => locate(path.join(folder, name))));
  const isWithin = folders.some((any) =>
    `${target}${path.sep}`.startsWith(`${path.dirname(any)}${path.sep}`),
  );
  if (!own.includes(target) && !isWithin) return null;
  return `${toOneLine(out)} belongs to the lesson, and the sheet would take its place. Write --out ${path.join('hand-in', 'sheet.csv')}, say.`;
}

/** The absolute path with links in its folders followed, as far as they are there. */
async function locate(file: string): Promise<string> {
  const { dir, base } = path.parse(path.resolve(file));
  return path.join(await realpath(dir).catch(() => dir), base);
}
