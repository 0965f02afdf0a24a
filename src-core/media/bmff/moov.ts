import type { BoundedBytes } from '../bounded-bytes.ts';
import { readMeta } from './meta.ts';
import type { MovieDraft } from './movie-draft.ts';
import { readMovieExtends } from './mvex.ts';
import { readMovieHeader } from './mvhd.ts';
import { readTrack } from './trak.ts';
import { readUserData } from './udta.ts';
import { type Box, walkBoxes } from './walk-boxes.ts';

/** How each part of a movie is read, by its four letters; other parts are stepped over. */
const PARTS: Readonly<Record<string, (bytes: BoundedBytes, box: Box, draft: MovieDraft) => Promise<void>>> = {
  mvhd: readMovieHeader,
  trak: readTrack,
  mvex: readMovieExtends,
  meta: readMeta,
  udta: readUserData,
};

/** The movie box — ISO/IEC 14496-12 §8.2.1: what describes the recording, at either end of the file. */
export async function readMovie(bytes: BoundedBytes, box: Box, draft: MovieDraft): Promise<void> {
  draft.hasMovieBox = true;
  // With the head of whatever comes next, mostly the pictures: where they end tells whether the file is whole.
  await bytes.prefetch(box.start, box.end - box.start + 16);
  const inside = { start: box.bodyStart, end: box.end };
  const problem = await walkBoxes(bytes, inside, (child) =>
    Object.hasOwn(PARTS, child.type) ? PARTS[child.type]?.(bytes, child, draft) : undefined,
  );
  if (problem) draft.problems.push(problem);
  if (!draft.hasMovieHeader) draft.problems.push({ code: 'media-malformed', at: box.start, part: 'mvhd' });
}
