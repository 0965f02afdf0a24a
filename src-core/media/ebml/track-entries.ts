import type { BoundedBytes } from '../bounded-bytes.ts';
import { ELEMENT } from './element-ids.ts';
import { readString, readUnsigned } from './element-values.ts';
import type { SegmentDraft } from './segment-draft.ts';
import { type Element, walkElements } from './walk-elements.ts';

/** TrackType 1 is video — RFC 9559 §5.1.4.1.3. */
const VIDEO = 1;

/** Tracks — RFC 9559 §5.1.4: whether there is video, and the codec of its first track. */
export async function readTrackEntries(
  bytes: BoundedBytes,
  tracks: Element,
  draft: SegmentDraft,
): Promise<void> {
  draft.hasTracks = true;
  await walkElements(bytes, { start: tracks.bodyStart, end: tracks.end }, async (entry) => {
    if (entry.id !== ELEMENT.trackEntry) return undefined;
    const track = await readTrackEntry(bytes, entry);
    if (track.type === VIDEO) {
      draft.hasVideo = true;
      draft.codec ??= track.codec;
    }
    return undefined;
  });
}

async function readTrackEntry(
  bytes: BoundedBytes,
  entry: Element,
): Promise<{ readonly type: number; readonly codec: string | null }> {
  let type = 0;
  let codec: string | null = null;
  await walkElements(bytes, { start: entry.bodyStart, end: entry.end }, async (element) => {
    if (element.id === ELEMENT.trackType) type = await readUnsigned(bytes, element);
    if (element.id === ELEMENT.codecId) codec = await readString(bytes, element);
    return undefined;
  });
  return { type, codec };
}
