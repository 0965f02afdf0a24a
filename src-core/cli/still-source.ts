import path from 'node:path';
import type { GradedLesson } from '../app/graded-lesson.ts';
import type { StillSource } from '../host/pdf/sheet-stills.ts';
import type { OpenFolder } from './open-folder.ts';

/** Where the stills of a lesson's clips come from: its evidence, else the clips where they lie. */
export function buildStillSource(
  { ports }: OpenFolder,
  { squads }: GradedLesson,
  { folder, clips = path.join(folder, 'clips') }: { readonly folder: string; readonly clips?: string },
): StillSource {
  const paths = new Map(
    squads.flatMap((squad) => squad.clips.map(({ reading, path: file }) => [reading.id, file] as const)),
  );
  return {
    findFile: (clip) => {
      const file = paths.get(clip);
      return file === undefined ? null : path.join(clips, ...file.split('/'));
    },
    readStrip: ports.readStrip,
  };
}
