import type { BoundedBytes } from '../bounded-bytes.ts';
import { noteRecorder } from '../recorder.ts';
import { readDateElement } from './date-element.ts';
import { ELEMENT } from './element-ids.ts';
import { findFloat, readString, readUnsigned } from './element-values.ts';
import type { SegmentDraft } from './segment-draft.ts';
import { type Element, walkElements } from './walk-elements.ts';

/** The segment's Info — RFC 9559 §5.1.2: scale, duration, when and by what the file was put together. */
export async function readSegmentInfo(
  bytes: BoundedBytes,
  info: Element,
  draft: SegmentDraft,
): Promise<void> {
  if (draft.hasInfo) return;
  draft.hasInfo = true;
  await walkElements(bytes, { start: info.bodyStart, end: info.end }, async (element) => {
    switch (element.id) {
      case ELEMENT.timestampScale:
        draft.timestampScale = await readUnsigned(bytes, element);
        break;
      case ELEMENT.duration:
        draft.duration = await findFloat(bytes, element);
        break;
      case ELEMENT.dateUtc:
        await readDateUtc(bytes, element, draft);
        break;
      case ELEMENT.writingApp:
        noteRecorder(draft.recorder, 'software', await readString(bytes, element));
        break;
    }
    return undefined;
  });
}

/** DateUTC — RFC 9559 §5.1.2.11: when the muxing application created the segment, not when it was filmed. */
async function readDateUtc(bytes: BoundedBytes, element: Element, draft: SegmentDraft): Promise<void> {
  const body = await bytes.read(element.bodyStart, Math.min(9, element.end - element.bodyStart));
  const date = readDateElement(body);
  if (!date) {
    draft.problems.push({ code: 'media-malformed', at: element.start, part: 'DateUTC' });
    return;
  }
  draft.dates.push({ field: 'segment-date', ...date, local: null, offsetMinutes: 0 });
}
