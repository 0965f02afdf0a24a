import { execFileSync, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { ExifTool } from 'exiftool-vendored';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { buildDemoLesson } from '../../fixtures/build-demo-lesson.ts';
import expected from '../../fixtures/harbour/expected.json' with { type: 'json' };
import { findFfmpeg } from '../../src-core/host/find-ffmpeg.ts';
import { planSchema } from '../../src-core/lesson/plan.ts';
import { readCodes } from '../unit/fixtures/read-code.ts';

const scratch = mkdtempSync(path.join(tmpdir(), 'routemark-demo-'));
const lesson = path.join(scratch, 'lesson');
const clip = (file: string) => path.join(lesson, 'clips', file);
const hasFfprobe = spawnSync('ffprobe', ['-version']).status === 0;
const canProbe = hasFfprobe ? test : test.skip;
if (!hasFfprobe)
  process.stderr.write('ffprobe is not on the PATH: container facts are checked by exiftool alone.\n');
const exiftool = new ExifTool({});

beforeAll(async () => {
  await buildDemoLesson(lesson);
});

afterAll(async () => {
  await exiftool.end();
  rmSync(scratch, { recursive: true, force: true });
});

function probe(file: string): {
  streams: Record<string, unknown>[];
  format: { duration: string; tags: Record<string, string> };
} {
  const asked = ['-v', 'error', '-show_streams', '-show_format', '-of', 'json', clip(file)];
  return JSON.parse(execFileSync('ffprobe', asked, { encoding: 'utf8' }));
}

function digest(file: string): string {
  return createHash('sha256')
    .update(readFileSync(clip(file)))
    .digest('hex');
}

/** Every file below a folder, by name and content. */
function digestAll(folder: string): string {
  const names = readdirSync(folder, { recursive: true, encoding: 'utf8' }).sort();
  const hash = createHash('sha256');
  for (const name of names) {
    const file = path.join(folder, name);
    if (statSync(file).isFile()) hash.update(name).update(readFileSync(file));
  }
  return hash.digest('hex');
}

describe('the demo lesson', () => {
  test('holds every file that is expected, and a plan that parses', () => {
    const named = [
      ...expected.clips.map(({ file }) => file),
      ...expected.copies.map(({ to }) => to),
      ...expected.unreadable,
      ...expected.passedOver,
    ];
    const found = readdirSync(path.join(lesson, 'clips'), { recursive: true, encoding: 'utf8' });
    const files = found.filter((name) => statSync(clip(name)).isFile());
    expect(files.sort()).toEqual([...new Set(named)].sort());
    planSchema.parse(JSON.parse(readFileSync(path.join(lesson, 'plan.json'), 'utf8')));
  });

  test('is the same to the byte when built again, and takes its films from the cache', async () => {
    const again = path.join(scratch, 'again');
    const built = await buildDemoLesson(again);
    expect(built.made).toBe(0);
    expect(digestAll(again)).toBe(digestAll(lesson));
  });

  test('is never put over a folder that holds something else', async () => {
    const other = mkdtempSync(path.join(scratch, 'other-'));
    writeFileSync(path.join(other, 'marks.txt'), 'mine');
    await expect(buildDemoLesson(other, { replace: true })).rejects.toThrow('Not an empty folder');
    await expect(buildDemoLesson(lesson)).rejects.toThrow('already there');
    expect(readdirSync(other)).toEqual(['marks.txt']);
  });

  test('is replaced whole when asked', async () => {
    const before = digestAll(lesson);
    writeFileSync(path.join(lesson, 'marks.jsonl'), '{}\n');
    await buildDemoLesson(lesson, { replace: true });
    expect(digestAll(lesson)).toBe(before);
  });

  test('leaves nothing behind when interrupted in the middle of filming', async () => {
    const stop = new AbortController();
    const target = path.join(scratch, 'interrupted');
    const onProgress = ({ done }: { done: number }) => {
      if (done === 1) stop.abort();
    };
    await expect(buildDemoLesson(target, { seed: 77, signal: stop.signal, onProgress })).rejects.toThrow();
    expect(readdirSync(scratch).filter((name) => name.startsWith('interrupted'))).toEqual([]);
  });

  test('holds one clip twice to the byte, one empty file and one cut short', () => {
    for (const { from, to } of expected.copies) expect(digest(to)).toBe(digest(from));
    expect(statSync(clip('Tablet 3/IMG_0002.MOV')).size).toBe(0);
    const rest = readFileSync(clip('MOSS/20250515_105205.mp4'));
    expect(rest.includes('ftyp')).toBe(true);
    expect(rest.includes('moov')).toBe(false);
  });

  test('was copied off the tablets that afternoon, by its files’ times', () => {
    for (const { file } of expected.clips) {
      const local = new Date(statSync(clip(file)).mtimeMs - 3 * 3_600_000).toISOString();
      expect(local).toMatch(/^2025-05-15T15:2/);
    }
  });
});

describe('the demo’s containers', () => {
  test('carry dates as their tablets write them, as exiftool reads them', async () => {
    const read = async (file: string) =>
      (await exiftool.readRaw(clip(file), { readArgs: ['-G1', '-a', '-time:all', '-Keys:all'] })) as Record<
        string,
        unknown
      >;
    // Written at the start, the end in the modification date, the tablet 4 s ahead.
    expect(await read('Teal squad/IMG_0412.MOV')).toMatchObject({
      'QuickTime:CreateDate': '2025:05:15 13:47:12',
      'QuickTime:ModifyDate': '2025:05:15 13:47:27',
      'Keys:CreationDate': '2025:05:15 10:47:12-03:00',
      'Keys:Make': 'Cobble',
      'Keys:Model': 'Slate 9',
    });
    // Written at the stop, 37 minutes slow.
    expect(await read('amber/VID_20250515_101036.mp4')).toMatchObject({
      'QuickTime:CreateDate': '2025:05:15 13:10:49',
      'QuickTime:ModifyDate': '2025:05:15 13:10:49',
      'Track1:MediaCreateDate': '2025:05:15 13:10:49',
      'Keys:AndroidVersion': 13,
      'Keys:AndroidModel': 'Tern 4',
    });
    expect(await read('Tablet 3/IMG_9999.MOV')).toMatchObject({
      'QuickTime:CreateDate': '0000:00:00 00:00:00',
      'Track1:TrackCreateDate': '0000:00:00 00:00:00',
      'Track1:MediaCreateDate': '0000:00:00 00:00:00',
    });
    expect(await read('amber/IMG_20250515_102030.jpg')).toMatchObject({
      'ExifIFD:DateTimeOriginal': '2025:05:15 10:20:30',
      'ExifIFD:OffsetTimeOriginal': '-03:00',
    });
    expect((await read('amber/VID_20250515_101512.mkv'))['Info:DateTimeOriginal']).toMatch(
      /^2025:05:15 13:15:12\.[78]/,
    );
  });

  canProbe('are what ffprobe takes them for: codec, tag, rotation, date, length', () => {
    expect(probe('Teal squad/IMG_0412.MOV').streams[0]).toMatchObject({
      codec_name: 'h264',
      codec_tag_string: 'avc1',
    });
    expect(probe('Teal squad/IMG_0417.MOV').streams[0]).toMatchObject({
      codec_name: 'hevc',
      codec_tag_string: 'hvc1',
    });
    const upright = probe('amber/VID_20250515_103505.mp4').streams[0];
    expect(upright).toMatchObject({ width: 640, height: 360, side_data_list: [{ rotation: -90 }] });
    const { tags } = probe('amber/VID_20250515_101512.mkv').format;
    expect(Math.floor(Date.parse(tags.creation_time ?? '') / 1000)).toBe(
      Date.parse('2025-05-15T13:15:12Z') / 1000,
    );
    expect(probe('Tablet 3/IMG_9999.MOV').format.tags.creation_time).toBeUndefined();
    for (const { file, kind, durationSeconds } of expected.clips) {
      if (kind === 'photo' || expected.unreadable.includes(file)) continue;
      expect(Math.abs(Number(probe(file).format.duration) - durationSeconds)).toBeLessThan(0.1);
    }
  });

  test('show cards that survive encoding: the right text in every clip that has one, none in the others', async () => {
    const found = await findFfmpeg();
    if (!found.ok) throw new Error('no ffmpeg');
    for (const { file, kind, station, stationFrom } of expected.clips) {
      if (kind === 'clock' || expected.unreadable.includes(file)) continue;
      const texts = await readHead(found.value.path, file);
      if (stationFrom === 'inferred') expect(texts).toEqual(new Set());
      else
        expect([...texts]).toEqual([
          expect.stringMatching(new RegExp(`^RM1/S/(HARBOUR|MEADOW)/${station}/[12]$`)),
        ]);
    }
  });
});

/** All texts in the first two seconds of a film, five frames a second, as shown (rotation heeded). */
async function readHead(ffmpeg: string, file: string): Promise<Set<string>> {
  const upright = file === 'amber/VID_20250515_103505.mp4';
  const [width, height] = upright ? [360, 640] : [640, 360];
  const scale = `${file.endsWith('.jpg') ? '' : 'fps=5,'}scale=${width}:${height}`;
  const shape = ['-t', '2', '-i', clip(file), '-vf', scale, '-pix_fmt', 'gray', '-f', 'rawvideo', 'pipe:1'];
  const bytes = execFileSync(ffmpeg, ['-v', 'error', ...shape], { maxBuffer: 1 << 26 });
  const texts = new Set<string>();
  for (let at = 0; at + width * height <= bytes.length; at += width * height) {
    const y = bytes.subarray(at, at + width * height);
    for (const text of await readCodes({ width, height, y })) texts.add(text);
  }
  return texts;
}
