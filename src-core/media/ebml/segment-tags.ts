import type { BoundedBytes } from '../bounded-bytes.ts';
import { parseDateText } from '../date-text.ts';
import type { DateFact } from '../media-facts.ts';
import { noteRecorder } from '../recorder.ts';
import { ELEMENT } from './element-ids.ts';
import { readString } from './element-values.ts';
import type { SegmentDraft } from './segment-draft.ts';
import { type Element, walkElements } from './walk-elements.ts';

const MOST_DATES = 16;

const RECORDER_TAGS: Readonly<Record<string, 'make' | 'model'>> = {
  'COM.APPLE.QUICKTIME.MAKE': 'make',
  'COM.APPLE.QUICKTIME.MODEL': 'model',
  'COM.ANDROID.MANUFACTURER': 'make',
  'COM.ANDROID.MODEL': 'model',
};

/**
 * Tags — RFC 9559 §5.1.8. Of `DATE_RECORDED` the tag list says "the time that the recording began". Tools that turn
 * a QuickTime file into Matroska carry its keys over as tags, in capitals (ffmpeg does); they mean what they meant.
 */
export async function readSegmentTags(
  bytes: BoundedBytes,
  tags: Element,
  draft: SegmentDraft,
): Promise<void> {
  if (draft.hasTags) return;
  draft.hasTags = true;
  await walkElements(bytes, { start: tags.bodyStart, end: tags.end }, async (tag) => {
    if (tag.id !== ELEMENT.tag) return undefined;
    await walkElements(bytes, { start: tag.bodyStart, end: tag.end }, async (simple) => {
      if (simple.id === ELEMENT.simpleTag) await readSimpleTag(bytes, simple, draft);
      return undefined;
    });
    return undefined;
  });
}

async function readSimpleTag(bytes: BoundedBytes, simple: Element, draft: SegmentDraft): Promise<void> {
  let name = '';
  let text = '';
  await walkElements(bytes, { start: simple.bodyStart, end: simple.end }, async (element) => {
    if (element.id === ELEMENT.tagName) name = (await readString(bytes, element)).toUpperCase();
    if (element.id === ELEMENT.tagString) text = await readString(bytes, element);
    return undefined;
  });
  noteTag(draft, name, text);
}

function noteTag(draft: SegmentDraft, name: string, text: string): void {
  if (name === 'DATE_RECORDED') noteDate(draft, buildRecordedDate(text));
  if (name === 'COM.APPLE.QUICKTIME.CREATIONDATE') {
    noteDate(draft, { field: 'recording-key', raw: text, ...parseDateText(text) });
  }
  if (name === 'COM.ANDROID.VERSION') draft.recorder.android = true;
  const field = Object.hasOwn(RECORDER_TAGS, name) ? RECORDER_TAGS[name] : undefined;
  if (field) noteRecorder(draft.recorder, field, text);
}

function noteDate(draft: SegmentDraft, date: DateFact): void {
  if (draft.dates.length < MOST_DATES) draft.dates.push(date);
}

/** Dates in tags are UTC and carry no offset — draft-ietf-cellar-tags, "Date Tags Formatting". */
function buildRecordedDate(text: string): DateFact {
  const written = parseDateText(text);
  const inUtc = written.local === null ? written : parseDateText(`${text.trim()}Z`);
  return { field: 'recorded-tag', raw: text, ...inUtc };
}
