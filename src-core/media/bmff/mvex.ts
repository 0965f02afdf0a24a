import type { BoundedBytes } from '../bounded-bytes.ts';
import { readU8, readU32, readU64 } from '../byte-numbers.ts';
import { MOST_TRACKS, type MovieDraft } from './movie-draft.ts';
import { type Box, walkBoxes } from './walk-boxes.ts';

/** Movie extends — ISO/IEC 14496-12 §8.8.1–8.8.3: fragments follow; `mehd` their length, `trex` defaults a track. */
export async function readMovieExtends(bytes: BoundedBytes, box: Box, draft: MovieDraft): Promise<void> {
  const problem = await walkBoxes(bytes, { start: box.bodyStart, end: box.end }, async (child) => {
    const body = await bytes.read(child.bodyStart, Math.min(24, child.end - child.bodyStart));
    if (child.type === 'mehd' && body.length >= 8) {
      const duration = readU8(body, 0) === 1 ? Number(readU64(body, 4)) : readU32(body, 4);
      draft.fragmentsDuration = duration > 0 ? duration : null;
    }
    if (child.type === 'trex' && body.length >= 16 && draft.fragments.size < MOST_TRACKS) {
      draft.fragments.set(readU32(body, 4), { defaultSampleDuration: readU32(body, 12), end: 0 });
    }
  });
  if (problem) draft.problems.push(problem);
}
