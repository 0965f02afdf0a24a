import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { ExifTool } from 'exiftool-vendored';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { withFileBytes } from '../../src-core/host/file-byte-source.ts';
import { chooseStamp } from '../../src-core/intake/choose-stamp.ts';
import type { DateField } from '../../src-core/media/media-facts.ts';
import { readMedia } from '../../src-core/media/read-media.ts';
import { iso } from '../unit/intake/stamp-input.ts';

// Container files with awkward dates, read by us, by ExifTool and by ffprobe. Two independent readers do not agree
// among themselves on every value (ExifTool patches wrong epochs: QuickTime.pm, "it is not uncommon for … software
// to use the wrong time zero"; FFmpeg patches others: libavformat/mov.c), so each case where our rule says
// otherwise is listed with its reason.

const FOLDER = fileURLToPath(new URL('../../../shared/containers/', import.meta.url));
const isThere = existsSync(`${FOLDER}ok.mp4`);
const hasProbe = spawnSync('ffprobe', ['-version']).status === 0;
const why = (name: string) =>
  `${name}${isThere ? '' : ' — skipped: no ../shared/containers'}${hasProbe ? '' : ' — ffprobe skipped: not installed'}`;

const MARCH = '2026-03-02T14:05:06Z';

interface Case {
  readonly file: string;
  readonly field: DateField;
  /** Where ExifTool keeps the same date. */
  readonly exiftoolTag: string;
  readonly probeTag: string;
  /** What our rule makes of it: the instant it gives, or null for "no usable date". */
  readonly ours: string | null;
  /** What the other readers say instead, and why we do not; nothing where all agree. */
  readonly exception?: {
    readonly exiftool: string | null;
    readonly ffprobe: string | null;
    readonly reason: string;
  };
}

const header = (file: string, ours: string | null, exception?: Case['exception']): Case => ({
  file,
  field: 'movie-header',
  exiftoolTag: 'QuickTime:CreateDate',
  probeTag: 'creation_time',
  ours,
  ...(exception ? { exception } : {}),
});

const CASES: readonly Case[] = [
  header('ok.mp4', MARCH),
  header('v1.mp4', MARCH),
  header('zero.mp4', null),
  header('unixepoch.mp4', null, {
    exiftool: MARCH,
    ffprobe: MARCH,
    reason: '1960 is no date, and the file does not say which mistake it was',
  }),
  header('offset.mp4', null, {
    exiftool: null,
    ffprobe: '1970-01-01T00:00:00Z',
    reason: 'before 1990 is no date',
  }),
  header('max.mp4', null, {
    exiftool: '2040-02-06T06:28:15Z',
    ffprobe: '2040-02-06T06:28:15Z',
    reason: 'the full counter is a sentinel, and to come',
  }),
  {
    file: 'q.mov',
    field: 'recording-key',
    exiftoolTag: 'Keys:CreationDate',
    probeTag: 'com.apple.quicktime.creationdate',
    ours: MARCH,
  },
  {
    file: 'd.mov',
    field: 'day-tag',
    exiftoolTag: 'UserData:ContentCreateDate',
    probeTag: 'date',
    ours: MARCH,
  },
  {
    file: 'd.mp4',
    field: 'day-tag',
    exiftoolTag: 'ItemList:ContentCreateDate',
    probeTag: 'date',
    ours: MARCH,
  },
  {
    file: 'k.mkv',
    field: 'segment-date',
    exiftoolTag: 'Info:DateTimeOriginal',
    probeTag: 'creation_time',
    ours: MARCH,
  },
];

/** Each case under a sentence of its own. */
const TITLED = CASES.map((one): readonly [string, Case] => [
  one.exception ? `${one.file}: not what we say, for ${one.exception.reason}` : `${one.file}: the same`,
  one,
]);

let exiftool: ExifTool;

beforeAll(() => {
  exiftool = new ExifTool({ maxProcs: 1 });
});
afterAll(() => exiftool.end());

async function readOurs(file: string) {
  const outcome = await withFileBytes(FOLDER + file, readMedia);
  const facts = outcome.ok ? outcome.value : null;
  const nowMs = Date.parse('2026-11-25T12:00:00Z');
  const stamp = chooseStamp({ facts, fileName: file, fileModifiedMs: null, zone: 'America/New_York', nowMs });
  return { outcome, facts, stamp };
}

/** ExifTool's text as an ISO instant; null for its zero date. */
function fromExifTool(text: unknown): string | null {
  const found = /^(\d{4}):(\d{2}):(\d{2}) ([\d:]{8})(Z|[+-]\d{2}:\d{2})?$/.exec(String(text));
  if (!found || found[1] === '0000') return null;
  return iso(Date.parse(`${found[1]}-${found[2]}-${found[3]}T${found[4]}${found[5] ?? 'Z'}`));
}

function fromProbe(file: string, tag: string): { instant: string | null; seconds: number; codec: string } {
  const output = execFileSync(
    'ffprobe',
    [
      '-v',
      'error',
      '-show_entries',
      'format=duration:format_tags:stream=codec_name',
      '-of',
      'json',
      FOLDER + file,
    ],
    { encoding: 'utf8' },
  );
  const { format, streams } = JSON.parse(output) as {
    format: { duration: string; tags: Record<string, string> };
    streams: { codec_name: string }[];
  };
  const text = format.tags[tag]?.replace(/([+-]\d{2})(\d{2})$/, '$1:$2');
  const ms = text === undefined ? null : Date.parse(text);
  return { instant: iso(ms), seconds: Number(format.duration), codec: streams[0]?.codec_name ?? '' };
}

describe.skipIf(!isThere)(why('container files with awkward dates'), () => {
  test.each(CASES)('our rule on $file gives $ours', async ({ file, field, ours }) => {
    const { stamp } = await readOurs(file);
    expect(iso(stamp.readMs)).toBe(ours);
    expect(stamp.source).toBe(ours === null ? 'none' : field);
  });

  test.each(TITLED)('ExifTool on %s', async (_, { file, exiftoolTag, ours, exception }) => {
    const tags = (await exiftool.readRaw(FOLDER + file, {
      readArgs: ['-G1', '-time:all'],
    })) as Record<string, unknown>;
    expect(fromExifTool(tags[exiftoolTag])).toBe(exception ? exception.exiftool : ours);
  });

  test.skipIf(!hasProbe).each(TITLED)('ffprobe on %s', async (_, { file, probeTag, ours, exception }) => {
    const theirs = fromProbe(file, probeTag);
    expect(theirs.instant).toBe(exception ? exception.ffprobe : ours);
    const { facts } = await readOurs(file);
    expect(facts?.durationSeconds).toBeCloseTo(theirs.seconds, 3);
    expect(theirs.codec).toBe('h264');
    expect(facts?.codec).toBe(file.endsWith('.mkv') ? 'V_MPEG4/ISO/AVC' : 'avc1');
  });

  test('what a header of no use holds is told, with its number', async () => {
    const raws = {
      'zero.mp4': '0',
      'unixepoch.mp4': '1772460306',
      'offset.mp4': '2082844800',
      'max.mp4': '4294967295',
    };
    for (const [file, raw] of Object.entries(raws)) {
      const { stamp } = await readOurs(file);
      expect(stamp.problems).toEqual([{ code: 'stamp-header-unusable', field: 'movie-header', raw }]);
    }
  });

  test('Matroska’s date is of muxing and not of filming (RFC 9559, DateUTC), though ExifTool calls it the original', async () => {
    const { stamp } = await readOurs('k.mkv');
    expect(stamp).toMatchObject({ meaning: 'unknown', trust: 'weak', reason: 'file-creation-only' });
  });

  test('none of them is a problem to read', async () => {
    for (const { file } of CASES) expect((await readOurs(file)).outcome.problems).toEqual([]);
  });
});
