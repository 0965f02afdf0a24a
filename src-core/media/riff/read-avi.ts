import { fail, type Outcome, succeed } from '../../platform/outcome.ts';
import type { Seconds } from '../../platform/units.ts';
import type { BoundedBytes } from '../bounded-bytes.ts';
import { readText } from '../byte-text.ts';
import type { DateFact, MediaFacts } from '../media-facts.ts';
import type { MediaProblem } from '../media-problem.ts';
import { noteRecorder, startRecorder } from '../recorder.ts';
import { findAviDuration } from './avih.ts';
import { parseRiffDate } from './riff-date.ts';
import { readStreamHeader } from './strh.ts';
import { type Chunk, walkChunks } from './walk-chunks.ts';

interface AviDraft {
  durationSeconds: Seconds | null;
  hasHeader: boolean;
  hasVideo: boolean;
  codec: string | null;
  readonly dates: DateFact[];
  readonly recorder: ReturnType<typeof startRecorder>;
  readonly problems: MediaProblem[];
}

/** Lists that are looked into, one level after the other; the pictures (`movi`) are stepped over. */
const OPENED = new Set(['AVI ', 'AVIX', 'hdrl', 'strl', 'INFO']);
const MOST_DEPTH = 4;
const MOST_DATES = 16;

/** Reads an AVI file — Microsoft, "AVI RIFF File Reference": length, codec, and the dates of `IDIT` and `ICRD`. */
export async function readAvi(bytes: BoundedBytes): Promise<Outcome<MediaFacts, MediaProblem>> {
  const draft: AviDraft = {
    durationSeconds: null,
    hasHeader: false,
    hasVideo: false,
    codec: null,
    dates: [],
    recorder: startRecorder(),
    problems: [],
  };
  await readInside(bytes, { start: 0, end: bytes.size }, draft, 0);
  if (bytes.isSpent()) draft.problems.push({ code: 'media-reading-limit' });
  const problems = draft.problems.slice(0, 16);
  if (!draft.hasHeader) return problems.length > 0 ? fail(...problems) : fail({ code: 'media-no-index' });
  if (!draft.hasVideo) problems.push({ code: 'media-no-picture' });
  noteRecorder(draft.recorder, 'brand', 'AVI');
  return succeed(
    {
      container: 'avi',
      holds: draft.hasVideo ? 'video' : 'sound',
      durationSeconds: draft.durationSeconds,
      dates: draft.dates,
      modifiedMs: null,
      recorder: draft.recorder,
      codec: draft.codec,
    },
    problems,
  );
}

async function readInside(
  bytes: BoundedBytes,
  range: { readonly start: number; readonly end: number },
  draft: AviDraft,
  depth: number,
): Promise<void> {
  await walkChunks(bytes, range, async (chunk) => {
    if (depth === 0 && chunk.missingBytes > 0) {
      draft.problems.push({ code: 'media-cut-short', missingBytes: chunk.missingBytes });
    }
    if (OPENED.has(chunk.form)) {
      if (depth < MOST_DEPTH)
        await readInside(bytes, { start: chunk.bodyStart, end: chunk.end }, draft, depth + 1);
    } else if (chunk.form === '') {
      await readChunk(bytes, chunk, draft);
    }
  });
}

async function readChunk(bytes: BoundedBytes, chunk: Chunk, draft: AviDraft): Promise<void> {
  const readBody = () => bytes.read(chunk.bodyStart, Math.min(256, chunk.end - chunk.bodyStart));
  switch (chunk.type) {
    case 'avih':
      draft.hasHeader = true;
      draft.durationSeconds ??= findAviDuration(await readBody());
      break;
    case 'strh': {
      const stream = readStreamHeader(await readBody());
      draft.hasVideo ||= stream.isVideo;
      if (stream.isVideo) draft.codec ??= stream.codec;
      break;
    }
    case 'IDIT':
    case 'ICRD': {
      const raw = readText(await readBody());
      if (draft.dates.length < MOST_DATES) {
        draft.dates.push({ field: 'riff-date', raw, ...parseRiffDate(raw) });
      }
      break;
    }
    case 'ISFT':
      noteRecorder(draft.recorder, 'software', readText(await readBody()));
      break;
  }
}
