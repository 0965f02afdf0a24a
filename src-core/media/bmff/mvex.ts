import type { BoundedBytes } from '../bounded-bytes.ts';
import { viewBytes } from '../byte-view.ts';
import { MOST_TRACKS, type MovieDraft } from './movie-draft.ts';
import { type Box, walkBoxes } from './walk-boxes.ts';

/** Movie extends — ISO/IEC 14496-12 §8.8.1–8.8.3: fragments follow; `mehd` their length, `trex` defaults a track. */
export async function readMovieExtends(bytes: BoundedBytes, box: Box, draft: MovieDraft): Promise<void> {
  const problem = await walkBoxes(bytes, { start: box.bodyStart, end: box.end }, async (child) => {
    const view = viewBytes(await bytes.read(child.bodyStart, Math.min(24, child.end - child.bodyStart)));
    if (child.type === 'mehd' && view.length >= 8) {
      const duration = view.u8(0) === 1 ? Number(view.u64(4)) : view.u32(4);
      draft.fragmentsDuration = duration > 0 ? duration : null;
    }
    if (child.type === 'trex' && view.length >= 16 && draft.fragments.size < MOST_TRACKS) {
      draft.fragments.set(view.u32(4), { defaultSampleDuration: view.u32(12), end: 0 });
    }
  });
  if (problem) draft.problems.push(problem);
}
