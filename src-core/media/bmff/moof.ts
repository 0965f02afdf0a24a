import type { BoundedBytes } from '../bounded-bytes.ts';
import { readU8, readU32, readU64 } from '../byte-numbers.ts';
import { MOST_TRACKS, type MovieDraft } from './movie-draft.ts';
import { readTrackRun } from './trun.ts';
import { type Box, walkBoxes } from './walk-boxes.ts';

/** One track's part of a fragment while it is read. */
interface PartDraft {
  id: number;
  defaultSampleDuration: number;
  /** Where the part begins, from `tfdt`; null where it says nothing and follows the part before. */
  start: number | null;
  length: number;
}

/** A movie fragment — ISO/IEC 14496-12 §8.8.4: how long each track grew by it. */
export async function readFragment(bytes: BoundedBytes, box: Box, draft: MovieDraft): Promise<void> {
  const problem = await walkBoxes(bytes, { start: box.bodyStart, end: box.end }, async (child) => {
    if (child.type === 'traf') await readTrackPart(bytes, child, draft);
  });
  if (problem) draft.problems.push(problem);
}

async function readTrackPart(bytes: BoundedBytes, box: Box, draft: MovieDraft): Promise<void> {
  const part: PartDraft = { id: 0, defaultSampleDuration: 0, start: null, length: 0 };
  await walkBoxes(bytes, { start: box.bodyStart, end: box.end }, async (child) => {
    if (child.type === 'tfhd') await readPartHeader(bytes, child, part, draft);
    if (child.type === 'tfdt') await readPartStart(bytes, child, part);
    if (child.type === 'trun') part.length += await readTrackRun(bytes, child, part.defaultSampleDuration);
  });
  const known = draft.fragments.get(part.id);
  if (!known && draft.fragments.size >= MOST_TRACKS) return;
  const end = (part.start ?? known?.end ?? 0) + part.length;
  draft.fragments.set(part.id, {
    defaultSampleDuration: known?.defaultSampleDuration ?? 0,
    end: Math.max(known?.end ?? 0, end),
  });
}

/** Track fragment header — §8.8.7: flags say which of its optional fields are there, in this order. */
async function readPartHeader(
  bytes: BoundedBytes,
  box: Box,
  part: PartDraft,
  draft: MovieDraft,
): Promise<void> {
  const body = await bytes.read(box.bodyStart, Math.min(32, box.end - box.bodyStart));
  const flags = readU32(body, 0) & 0xff_ffff;
  part.id = readU32(body, 4);
  part.defaultSampleDuration = draft.fragments.get(part.id)?.defaultSampleDuration ?? 0;
  const at = 8 + (flags & 0x1 ? 8 : 0) + (flags & 0x2 ? 4 : 0);
  if (flags & 0x8 && body.length >= at + 4) part.defaultSampleDuration = readU32(body, at);
}

/** Track fragment decode time — §8.8.12. */
async function readPartStart(bytes: BoundedBytes, box: Box, part: PartDraft): Promise<void> {
  const body = await bytes.read(box.bodyStart, Math.min(12, box.end - box.bodyStart));
  if (body.length >= 8) part.start = readU8(body, 0) === 1 ? Number(readU64(body, 4)) : readU32(body, 4);
}
