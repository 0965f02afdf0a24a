import exifr from 'exifr';
import { fail, type Outcome, succeed } from '../../platform/outcome.ts';
import type { BoundedBytes } from '../bounded-bytes.ts';
import type { DateFact, MediaFacts } from '../media-facts.ts';
import type { MediaProblem } from '../media-problem.ts';
import { noteRecorder, startRecorder } from '../recorder.ts';
import { buildExifDate } from './exif-date.ts';
import { findHeicExif } from './heic-exif.ts';
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

type Tags = Readonly<Record<string, unknown>>;

/** No picture is smaller, in any of the three formats: its signature and its first block take as much. */
const LEAST_BYTES = 64;

/** Reads a still picture's EXIF through exifr: from the first bytes of a JPEG or PNG, from where HEIC says it lies. */
export async function readStill(
  bytes: BoundedBytes,
  container: 'jpeg' | 'heic' | 'png',
): Promise<Outcome<MediaFacts, MediaProblem>> {
  if (bytes.size < LEAST_BYTES) return fail({ code: 'media-cut-short', missingBytes: null });
  const { tags, isBroken } = await readTags(
    container === 'heic' ? await findHeicExif(bytes) : await readStillHead(bytes),
  );
  const problems: MediaProblem[] = [];
  if (isBroken) problems.push({ code: 'media-malformed', at: 0, part: 'EXIF' });
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

function findDates(tags: Tags): readonly DateFact[] {
  const taken = getText(tags, 'DateTimeOriginal');
  const digitised = getText(tags, 'CreateDate');
  const offset = getText(tags, 'OffsetTimeOriginal') || getText(tags, 'OffsetTime');
  const written = taken || digitised;
  return written === '' ? [] : [buildExifDate(written, offset)];
}

function getText(tags: Tags, name: string): string {
  const value = tags[name];
  return typeof value === 'string' ? value.replaceAll('\0', '').trim() : '';
}

/** exifr throws on some blocks it cannot follow and lists its `errors` for others: a broken block either way. */
async function readTags(
  head: Uint8Array | null,
): Promise<{ readonly tags: Tags; readonly isBroken: boolean }> {
  if (head === null) return { tags: {}, isBroken: false };
  try {
    const tags = (await exifr.parse(head, { pick: TAGS, reviveValues: false, translateValues: false })) ?? {};
    return { tags, isBroken: Object.hasOwn(tags, 'errors') };
  } catch {
    return { tags: {}, isBroken: true };
  }
}
