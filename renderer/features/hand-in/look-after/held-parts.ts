import type { HeldFile } from '../../../../src-core/lesson-file/deletion-log.ts';

/** A part of a lesson folder: a file or folder at its top, stills and films of the cache apart. */
export interface HeldPart {
  readonly name: string;
  readonly files: number;
  readonly bytes: number;
}

/** The files by their part of the lesson, in the order in which they first come. */
export function groupByPart(files: readonly HeldFile[]): readonly HeldPart[] {
  const parts = new Map<string, HeldFile[]>();
  for (const file of files) {
    const name = getPart(file.path);
    parts.set(name, [...(parts.get(name) ?? []), file]);
  }
  return [...parts].map(([name, own]) => ({ name, files: own.length, bytes: addUp(own) }));
}

/** Pictures cut and films made for the window are pupils' pictures as much as the clips: they are named. */
function getPart(path: string): string {
  const [top = '', inner = '', ...deeper] = path.split('/');
  return top === 'evidence' && deeper.length > 0 ? `${top}/${inner}` : top;
}

/** Bytes of all the files together. */
export function addUp(files: readonly HeldFile[]): number {
  return files.reduce((sum, { bytes }) => sum + bytes, 0);
}
