import { execFileSync, spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createFile, Log, type MP4BoxBuffer } from 'mp4box';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { withFileBytes } from '../../src-core/host/file-byte-source.ts';
import { findFfmpeg } from '../../src-core/host/find-ffmpeg.ts';
import { chooseStamp } from '../../src-core/intake/choose-stamp.ts';
import type { MediaFacts } from '../../src-core/media/media-facts.ts';
import { readMedia } from '../../src-core/media/read-media.ts';
import { iso } from '../unit/intake/stamp-input.ts';
import { showDate } from '../unit/media/read-facts.ts';

// Files that ffmpeg makes in every layout we read, against mp4box for boxes and ffprobe for the rest.

const found = await findFfmpeg();
const hasFfmpeg = found.ok;
const hasProbe = spawnSync('ffprobe', ['-version']).status === 0;
const MARCH = '2026-03-02T14:05:06Z';

/** Three seconds of picture, as small as can be. */
const PICTURE = ['-f', 'lavfi', '-i', 'testsrc2=size=64x48:rate=25:duration=3'];
const CODEC = ['-c:v', 'mpeg4', '-g', '25'];
const DATE = ['-metadata', `creation_time=${MARCH}`];

const BOXES: Readonly<Record<string, readonly string[]>> = {
  'plain.mp4': [],
  'front.mp4': ['-movflags', 'faststart'],
  'fragments.mp4': ['-movflags', 'frag_keyframe+empty_moov'],
  'fragments-default-base.mp4': ['-movflags', 'frag_keyframe+empty_moov+default_base_moof'],
  'fragments-after-samples.mp4': ['-movflags', 'frag_keyframe'],
  'fragments-indexed.mp4': ['-movflags', 'dash+global_sidx'],
  'tags.mov': [
    '-movflags',
    'use_metadata_tags',
    '-metadata',
    'com.apple.quicktime.creationdate=2026-03-02T09:05:06-0500',
  ],
  'plain.mov': [],
  'year.mp4': ['-metadata', 'date=2026'],
};

const OTHERS: Readonly<Record<string, readonly string[]>> = {
  'plain.mkv': ['-c:v', 'mpeg4'],
  'live.mkv': ['-c:v', 'mpeg4', '-live', '1'],
  'recorded.mkv': ['-c:v', 'mpeg4', '-metadata', 'DATE_RECORDED=2026-03-02 14:04:54.000'],
  'plain.webm': ['-c:v', 'libvpx', '-deadline', 'realtime', '-cpu-used', '8'],
  'plain.avi': ['-c:v', 'mjpeg', '-metadata', 'date=2026-03-02 09:05:06'],
};

let folder = '';
const inside = (name: string) => join(folder, name);
const run = (...args: readonly string[]) =>
  execFileSync(found.ok ? found.value.path : '', ['-v', 'error', '-y', ...args]);

async function getFacts(name: string): Promise<MediaFacts> {
  const outcome = await withFileBytes(inside(name), readMedia);
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  expect(outcome.problems).toEqual([]);
  return outcome.value;
}

function readByMp4box(name: string) {
  const bytes = readFileSync(inside(name));
  const buffer = bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.length) as MP4BoxBuffer;
  buffer.fileStart = 0;
  const file = createFile();
  file.appendBuffer(buffer);
  file.flush();
  return file.getInfo();
}

function probeSeconds(name: string): number {
  const args = ['-v', 'error', '-show_entries', 'format=duration', '-of', 'csv=p=0', inside(name)];
  return Number(execFileSync('ffprobe', args, { encoding: 'utf8' }));
}

const suffix = hasFfmpeg ? '' : ' — skipped: no ffmpeg that runs';

describe.skipIf(!hasFfmpeg)(`files made by ffmpeg${suffix}`, () => {
  beforeAll(async () => {
    // mp4box reports QuickTime's © boxes as errors on the console; it reads on all the same.
    Log.error = () => undefined;
    folder = await mkdtemp(join(tmpdir(), 'routemark-made-'));
    for (const [name, options] of Object.entries(BOXES)) {
      run(...PICTURE, ...CODEC, ...DATE, ...options, inside(name));
    }
    for (const [name, options] of Object.entries(OTHERS)) run(...PICTURE, ...DATE, ...options, inside(name));
  });
  afterAll(() => rm(folder, { recursive: true }));

  test.each(Object.keys(BOXES))('%s: date, codec and length as mp4box reads them', async (name) => {
    const facts = await getFacts(name);
    const theirs = readByMp4box(name);
    expect(showDate(facts, 'movie-header')).toBe(iso(theirs.created.getTime()));
    expect(showDate(facts, 'movie-header')).toBe(MARCH);
    expect(theirs.tracks[0]?.codec.startsWith(facts.codec ?? '?')).toBe(true);
    if (!theirs.isFragmented)
      expect(facts.durationSeconds).toBeCloseTo(theirs.duration / theirs.timescale, 3);
    else expect(facts.durationSeconds).toBeCloseTo(3, 1);
  });

  test
    .skipIf(!hasProbe)
    .each([...Object.keys(BOXES), ...Object.keys(OTHERS)].filter((name) => name !== 'live.mkv'))(
    `%s: as long as ffprobe says${hasProbe ? '' : ' — skipped: no ffprobe'}`,
    async (name) => {
      expect((await getFacts(name)).durationSeconds).toBeCloseTo(probeSeconds(name), 1);
    },
  );

  test('a live recording without a length says none', async () => {
    const facts = await getFacts('live.mkv');
    expect(facts).toMatchObject({ container: 'matroska', durationSeconds: null, codec: 'V_MPEG4/ISO/ASP' });
  });

  test('the QuickTime key, the year alone, DATE_RECORDED and the AVI date are found', async () => {
    expect(showDate(await getFacts('tags.mov'), 'recording-key')).toBe(MARCH);
    expect((await getFacts('year.mp4')).dates.at(-1)).toMatchObject({
      raw: '2026',
      instantMs: null,
      local: null,
    });
    expect(showDate(await getFacts('recorded.mkv'), 'recorded-tag')).toBe('2026-03-02T14:04:54Z');
    expect(showDate(await getFacts('plain.avi'), 'riff-date')).toBe('2026-03-02T09:05:06');
    expect((await getFacts('plain.webm')).container).toBe('webm');
  });

  test('a copy to MP4 without -map_metadata: whatever date is left is that of the original', async () => {
    run('-i', inside('plain.mp4'), '-c', 'copy', inside('copy.mp4'));
    const left = showDate(await getFacts('copy.mp4'), 'movie-header');
    expect([MARCH, '1904-01-01T00:00:00Z']).toContain(left);
  });

  test('a copy to MP4 or MKV with -map_metadata 0 keeps it', async () => {
    run('-i', inside('plain.mp4'), '-c', 'copy', '-map_metadata', '0', inside('kept.mp4'));
    run('-i', inside('plain.mp4'), '-c', 'copy', '-map_metadata', '0', inside('kept.mkv'));
    expect(showDate(await getFacts('kept.mp4'), 'movie-header')).toBe(MARCH);
    expect(showDate(await getFacts('kept.mkv'), 'segment-date')).toBe(MARCH);
  });

  test('cut in the middle, a file with its movie box in front keeps its date, one with it at the end has none', async () => {
    const cut = async (name: string) => {
      const bytes = readFileSync(inside(name));
      const half = bytes.subarray(0, Math.floor(bytes.length * 0.8));
      const source = {
        size: half.length,
        read: async (at: number, length: number) => half.subarray(at, at + length),
      };
      return readMedia(source);
    };
    const front = await cut('front.mp4');
    expect(front.ok && showDate(front.value, 'movie-header')).toBe(MARCH);
    expect(front.problems).toMatchObject([{ code: 'media-cut-short' }]);
    const plain = await cut('plain.mp4');
    expect(plain).toMatchObject({ ok: false, problems: [{ code: 'media-cut-short' }] });
  });

  test('a clip by its stamp: an MP4 header that nothing explains, give or take its three seconds', async () => {
    const facts = await getFacts('front.mp4');
    const nowMs = Date.parse('2026-11-25T12:00:00Z');
    const stamp = chooseStamp({
      facts,
      fileName: 'front.mp4',
      fileModifiedMs: nowMs,
      zone: 'America/New_York',
      nowMs,
    });
    expect(stamp).toMatchObject({
      source: 'movie-header',
      meaning: 'unknown',
      uncertaintySeconds: 3,
      trust: 'fair',
    });
  });
});
