import exifr from 'exifr';
import { fail, type Outcome, succeed } from '../../platform/outcome.ts';
import type { BoundedBytes } from '../bounded-bytes.ts';
import type { DateFact, MediaFacts } from '../media-facts.ts';
import type { MediaProblem } from '../media-problem.ts';
import { noteRecorder, startRecorder } from '../recorder.ts';
import { buildExifDate } from './exif-date.ts';
import { readStillHead } from './still-head.ts';

const TAGS = [
  'DateTimeOriginal',
  'CreateDate',
  'OffsetTimeOriginal',
  'OffsetTime',
  'Make',
  'Model',
  'Software',
] as const;

/** Reads a still picture's EXIF through exifr, from the first bytes of the file. */
export async function readStill(
  bytes: BoundedBytes,
  container: 'jpeg' | 'heic' | 'png',
): Promise<Outcome<MediaFacts, MediaProblem>> {
  const head = await readStillHead(bytes);
  const problems: MediaProblem[] = [];
  let tags: Readonly<Record<string, unknown>> = {};
  try {
    tags = (await exifr.parse(head, { pick: TAGS, reviveValues: false, translateValues: false })) ?? {};
  } catch {
    // exifr throws on whatever it cannot follow: a broken block and an outright lie alike.
    problems.push({ code: 'media-malformed', at: 0, part: 'EXIF' });
  }
  const cut = findCutShort(head, container, bytes.size);
  if (cut) problems.push(cut);
  if (cut && Object.keys(tags).length === 0) return fail(...problems);
  const recorder = startRecorder();
  noteRecorder(recorder, 'make', getText(tags, 'Make'));
  noteRecorder(recorder, 'model', getText(tags, 'Model'));
  noteRecorder(recorder, 'software', getText(tags, 'Software'));
  return succeed(
    {
      container,
      holds: 'still',
      durationSeconds: null,
      dates: findDates(tags),
      modifiedMs: null,
      recorder,
      codec: null,
    },
    problems,
  );
}

function findDates(tags: Readonly<Record<string, unknown>>): readonly DateFact[] {
  const taken = getText(tags, 'DateTimeOriginal');
  const digitised = getText(tags, 'CreateDate');
  const offset = getText(tags, 'OffsetTimeOriginal') || getText(tags, 'OffsetTime');
  const written = taken || digitised;
  return written === '' ? [] : [buildExifDate(written, offset)];
}

function getText(tags: Readonly<Record<string, unknown>>, name: string): string {
  const value = tags[name];
  return typeof value === 'string' ? value.replaceAll('\0', '').trim() : '';
}

/** A still of which not even its own first blocks are there: nothing but the signature. */
function findCutShort(head: Uint8Array, container: string, size: number): MediaProblem | null {
  const least = container === 'png' ? 33 : 64;
  return head.length < least && size < least ? { code: 'media-cut-short', missingBytes: null } : null;
}
