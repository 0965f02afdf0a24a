import type { BoundedBytes } from '../bounded-bytes.ts';
import { readU8, readU16, readU32 } from '../byte-numbers.ts';
import { MOST_TRACKS, type MovieDraft } from './movie-draft.ts';
import type { Box } from './walk-boxes.ts';

/**
 * Segment index — ISO/IEC 14496-12 §8.16.3: the durations of the media that follows, by track. References to
 * further indexes are left out: those are read themselves.
 */
export async function readSegmentIndex(bytes: BoundedBytes, box: Box, draft: MovieDraft): Promise<void> {
  const body = await bytes.read(box.bodyStart, box.end - box.bodyStart);
  const isLong = readU8(body, 0) === 1;
  const countAt = isLong ? 30 : 22;
  const timescale = readU32(body, 8);
  if (body.length < countAt + 2 || timescale === 0) return;
  const track = readU32(body, 4);
  if (!draft.indexedSeconds.has(track) && draft.indexedSeconds.size >= MOST_TRACKS) return;
  let units = 0;
  const count = Math.min(readU16(body, countAt), Math.floor((body.length - countAt - 2) / 12));
  for (let row = 0; row < count; row += 1) {
    const at = countAt + 2 + row * 12;
    const isMedia = (readU8(body, at) & 0x80) === 0;
    if (isMedia) units += readU32(body, at + 4);
  }
  draft.indexedSeconds.set(track, (draft.indexedSeconds.get(track) ?? 0) + units / timescale);
}
