import type { BoundedBytes } from '../bounded-bytes.ts';
import { ELEMENT } from './element-ids.ts';
import { readUnsigned } from './element-values.ts';
import type { SegmentDraft } from './segment-draft.ts';
import { type Element, walkElements } from './walk-elements.ts';

const MOST_POSITIONS = 64;

/** Seek head — RFC 9559 §5.1.1: where the segment's parts lie, counted from the beginning of its data. */
export async function readSeekHead(
  bytes: BoundedBytes,
  seekHead: Element,
  segmentStart: number,
  draft: SegmentDraft,
): Promise<void> {
  await walkElements(bytes, { start: seekHead.bodyStart, end: seekHead.end }, async (seek) => {
    if (seek.id !== ELEMENT.seek || draft.positions.size >= MOST_POSITIONS) return undefined;
    let id = 0;
    let position = -1;
    await walkElements(bytes, { start: seek.bodyStart, end: seek.end }, async (element) => {
      if (element.id === ELEMENT.seekId) id = await readUnsigned(bytes, element);
      if (element.id === ELEMENT.seekPosition) position = await readUnsigned(bytes, element);
      return undefined;
    });
    if (position >= 0) draft.positions.set(id, segmentStart + position);
    return undefined;
  });
}
