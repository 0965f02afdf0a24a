import { fail, type Outcome, succeed } from '../../platform/outcome.ts';
import type { Seconds } from '../../platform/units.ts';
import type { BoundedBytes } from '../bounded-bytes.ts';
import type { MediaFacts } from '../media-facts.ts';
import type { MediaProblem } from '../media-problem.ts';
import { noteRecorder } from '../recorder.ts';
import { ELEMENT } from './element-ids.ts';
import { readString } from './element-values.ts';
import { readSeekHead } from './seek-head.ts';
import { type SegmentDraft, startSegment } from './segment-draft.ts';
import { readSegmentInfo } from './segment-info.ts';
import { readSegmentTags } from './segment-tags.ts';
import { readTrackEntries } from './track-entries.ts';
import { type Element, type WalkEnd, walkElements } from './walk-elements.ts';

/** Reads a Matroska or WebM file — RFC 9559: the EBML header, then the first segment's description. */
export async function readMatroska(bytes: BoundedBytes): Promise<Outcome<MediaFacts, MediaProblem>> {
  const draft = startSegment();
  let docType = 'matroska';
  const ended = await walkElements(bytes, { start: 0, end: bytes.size }, async (element) => {
    if (element.id === ELEMENT.ebml) docType = (await findDocType(bytes, element)) ?? docType;
    if (element.id !== ELEMENT.segment) return undefined;
    await readSegment(bytes, element, draft);
    return 'enough';
  });
  noteWalkEnd(draft, ended);
  if (bytes.isSpent()) draft.problems.push({ code: 'media-reading-limit' });
  const problems = draft.problems.slice(0, 16);
  if (!draft.hasInfo && !draft.hasTracks) {
    return problems.length > 0 ? fail(...problems) : fail({ code: 'media-no-index' });
  }
  if (!draft.hasVideo) problems.push({ code: 'media-no-picture' });
  noteRecorder(draft.recorder, 'brand', docType);
  return succeed(
    {
      container: docType === 'webm' ? 'webm' : 'matroska',
      holds: draft.hasVideo ? 'video' : 'sound',
      durationSeconds: findDuration(draft),
      dates: draft.dates,
      modifiedMs: null,
      recorder: draft.recorder,
      codec: draft.codec,
    },
    problems,
  );
}

async function findDocType(bytes: BoundedBytes, header: Element): Promise<string | null> {
  let docType: string | null = null;
  await walkElements(bytes, { start: header.bodyStart, end: header.end }, async (element) => {
    if (element.id === ELEMENT.docType) docType = await readString(bytes, element);
    return undefined;
  });
  return docType;
}

/** Reads the segment's parts up to its first pictures, and those beyond them that its seek head names. */
async function readSegment(bytes: BoundedBytes, segment: Element, draft: SegmentDraft): Promise<void> {
  if (segment.missingBytes > 0) {
    draft.problems.push({ code: 'media-cut-short', missingBytes: segment.missingBytes });
  }
  const range = { start: segment.bodyStart, end: segment.end };
  const ended = await walkElements(bytes, range, async (element) => {
    if (element.id === ELEMENT.cluster) return isClusterTheEnd(element, draft) ? 'enough' : undefined;
    if (element.id === ELEMENT.seekHead) await readSeekHead(bytes, element, segment.bodyStart, draft);
    await readPart(bytes, element, draft);
    return undefined;
  });
  noteWalkEnd(draft, ended);
  await readNamedParts(bytes, segment, draft);
}

/** Pictures without a size cannot be stepped over, and need not be where a seek head tells what lies beyond. */
function isClusterTheEnd(cluster: Element, draft: SegmentDraft): boolean {
  return cluster.isUnknownSize || draft.positions.size > 0;
}

async function readPart(bytes: BoundedBytes, element: Element, draft: SegmentDraft): Promise<void> {
  switch (element.id) {
    case ELEMENT.info:
      return readSegmentInfo(bytes, element, draft);
    case ELEMENT.tracks:
      return readTrackEntries(bytes, element, draft);
    case ELEMENT.tags:
      return readSegmentTags(bytes, element, draft);
  }
}

async function readNamedParts(bytes: BoundedBytes, segment: Element, draft: SegmentDraft): Promise<void> {
  const unread: readonly (readonly [number, boolean])[] = [
    [ELEMENT.info, draft.hasInfo],
    [ELEMENT.tracks, draft.hasTracks],
    [ELEMENT.tags, draft.hasTags],
  ];
  for (const [id, isRead] of unread) {
    const start = draft.positions.get(id);
    if (isRead || start === undefined || start >= segment.end) continue;
    await walkElements(bytes, { start, end: segment.end }, async (element) => {
      if (element.id === id) await readPart(bytes, element, draft);
      return 'enough';
    });
  }
}

function findDuration(draft: SegmentDraft): Seconds | null {
  const seconds = ((draft.duration ?? 0) * draft.timestampScale) / 1e9;
  return Number.isFinite(seconds) && seconds > 0 ? seconds : null;
}

function noteWalkEnd(draft: SegmentDraft, end: WalkEnd): void {
  if (end.ended === 'malformed') draft.problems.push({ code: 'media-malformed', at: end.at, part: 'EBML' });
}
