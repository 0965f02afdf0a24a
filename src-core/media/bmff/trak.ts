import type { BoundedBytes } from '../bounded-bytes.ts';
import { readLetters, readU32 } from '../byte-numbers.ts';
import { findHeaderTimes } from './header-box.ts';
import { buildHeaderDate, type HeaderTimes } from './header-times.ts';
import { MOST_DATES, MOST_TRACKS, type MovieDraft, type TrackDraft } from './movie-draft.ts';
import { type Box, printable, walkBoxes } from './walk-boxes.ts';

/** What the readers of a track's parts share. */
interface TrackReading {
  readonly bytes: BoundedBytes;
  readonly track: TrackDraft;
  readonly draft: MovieDraft;
}

/** `trak` holds `mdia` holds `minf` holds `stbl`; nothing that is read lies deeper. */
const MOST_DEPTH = 4;

const HOLDERS = new Set(['mdia', 'minf', 'stbl']);

/** A track — ISO/IEC 14496-12 §8.3: `tkhd`, and in `mdia` its `mdhd`, `hdlr` and the codec in `minf/stbl/stsd`. */
export async function readTrack(bytes: BoundedBytes, box: Box, draft: MovieDraft): Promise<void> {
  if (draft.tracks.length >= MOST_TRACKS) return;
  const track: TrackDraft = { id: 0, handler: '', codec: null, timescale: 0, duration: null };
  draft.tracks.push(track);
  await readParts({ bytes, track, draft }, box, 1);
}

async function readParts(reading: TrackReading, holder: Box, depth: number): Promise<void> {
  const inside = { start: holder.bodyStart, end: holder.end };
  const problem = await walkBoxes(reading.bytes, inside, async (box) => {
    if (HOLDERS.has(box.type) && depth < MOST_DEPTH) await readParts(reading, box, depth + 1);
    else await readPart(reading, box);
  });
  if (problem) reading.draft.problems.push(problem);
}

async function readPart({ bytes, track, draft }: TrackReading, box: Box): Promise<void> {
  switch (box.type) {
    case 'tkhd':
    case 'mdhd': {
      const times = await findHeaderTimes(bytes, box, draft);
      if (times) noteHeader(box.type, times, track, draft);
      return;
    }
    case 'hdlr':
      // `minf` of QuickTime holds an `hdlr` of its own, for data and not for pictures; the first one counts.
      track.handler ||= printable(readLetters(await bytes.read(box.bodyStart, 12), 8));
      return;
    case 'stsd':
      track.codec ??= await findFirstCodec(bytes, box);
  }
}

function noteHeader(type: 'tkhd' | 'mdhd', times: HeaderTimes, track: TrackDraft, draft: MovieDraft): void {
  const field = type === 'tkhd' ? 'track-header' : 'media-header';
  if (draft.dates.length < MOST_DATES) draft.dates.push(buildHeaderDate(field, times.created));
  if (type === 'tkhd') {
    track.id = times.next;
  } else {
    track.timescale = times.next;
    track.duration = times.duration;
  }
}

/** Sample description — §8.5.2: version, flags and count, then the first entry's size and four letters. */
async function findFirstCodec(bytes: BoundedBytes, box: Box): Promise<string | null> {
  const body = await bytes.read(box.bodyStart, Math.min(16, box.end - box.bodyStart));
  return body.length === 16 && readU32(body, 4) > 0 ? printable(readLetters(body, 12)) : null;
}
