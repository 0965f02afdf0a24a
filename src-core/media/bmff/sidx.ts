import type { BoundedBytes } from '../bounded-bytes.ts';
import { viewBytes } from '../byte-view.ts';
import { MOST_TRACKS, type MovieDraft } from './movie-draft.ts';
import type { Box } from './walk-boxes.ts';

/**
 * Segment index — ISO/IEC 14496-12 §8.16.3: the durations of the media that follows, by track. References to
 * further indexes are left out: those are read themselves.
 */
export async function readSegmentIndex(bytes: BoundedBytes, box: Box, draft: MovieDraft): Promise<void> {
  const view = viewBytes(await bytes.read(box.bodyStart, box.end - box.bodyStart));
  const isLong = view.u8(0) === 1;
  const countAt = isLong ? 30 : 22;
  const timescale = view.u32(8);
  if (view.length < countAt + 2 || timescale === 0) return;
  const track = view.u32(4);
  if (!draft.indexedSeconds.has(track) && draft.indexedSeconds.size >= MOST_TRACKS) return;
  let units = 0;
  const count = Math.min(view.u16(countAt), Math.floor((view.length - countAt - 2) / 12));
  for (let row = 0; row < count; row += 1) {
    const at = countAt + 2 + row * 12;
    const isMedia = (view.u8(at) & 0x80) === 0;
    if (isMedia) units += view.u32(at + 4);
  }
  draft.indexedSeconds.set(track, (draft.indexedSeconds.get(track) ?? 0) + units / timescale);
}
