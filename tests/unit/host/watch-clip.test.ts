import { execFile } from 'node:child_process';
import { statSync } from 'node:fs';
import {
  copyFile,
  mkdir,
  mkdtemp,
  readdir,
  readFile,
  rm,
  truncate,
  unlink,
  writeFile,
} from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as delay } from 'node:timers/promises';
import { promisify } from 'node:util';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  cardsAnalyser,
  defineMovementAnalyser,
  lookAnalyser,
  motionAnalyser,
  stillsAnalyser,
  watchAnalyser,
} from '../../../src-core/host/analysers.ts';
import { type EvidenceCache, openEvidenceCache } from '../../../src-core/host/evidence-cache.ts';
import { findFfmpeg } from '../../../src-core/host/find-ffmpeg.ts';
import { lookAtClip } from '../../../src-core/host/look-at-clip.ts';
import {
  getOptionsKey,
  readClipMovement,
  recallMovement,
} from '../../../src-core/host/read-clip-movement.ts';
import { readStrip } from '../../../src-core/host/read-strip.ts';
import { recallWatch, watchClip } from '../../../src-core/host/watch-clip.ts';
import { formatStationCard } from '../../../src-core/lesson/card-text.ts';
import { filmClip } from './film-clip.ts';
import { makeTemporaryFolder } from './temporary-folder.ts';

const TEXT = formatStationCard({ lesson: 'HARBOUR', station: 'A', revision: 2 });
const OPTIONS = { reps: { counting: 'cycle' as const }, unison: { toleranceSeconds: 0.35 } };

let folder = '';
let clip = { path: '', contentId: 'c1' };
let brief = { path: '', contentId: 'brief' };

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'watch-'));
  const card = { text: TEXT, pixelsPerModule: 4, turnDegrees: 8, tilt: 0.1 };
  const shots = [{ seconds: 1.4, card }, { seconds: 5 }];
  clip = { ...clip, path: await filmClip(join(folder, 'clip.mp4'), { shots }) };
  const short = [{ seconds: 0.9, card }, { seconds: 3 }];
  brief = { ...brief, path: await filmClip(join(folder, 'brief.mp4'), { shots: short }) };
});

afterAll(() => rm(folder, { recursive: true }));

const openCache = () => {
  const place = join(makeTemporaryFolder(), 'evidence');
  return { place, cache: openEvidenceCache(place) };
};

describe('watching a clip', () => {
  test('leaves motion, stills, look, card and print in the cache, and costs nothing again', async () => {
    const { place, cache } = openCache();
    const first = await watchClip(cache, clip, { threads: 1 });
    expect(first.problems).toEqual([]);
    expect(first.ffmpegCpuSeconds).toBeGreaterThan(0);
    expect(first.print.seconds).toHaveLength(7);
    expect((await readdir(place)).sort()).toEqual([
      'c1.cards.json',
      'c1.look.json',
      'c1.motion.bin',
      'c1.stills.bin',
      'c1.watch.json',
    ]);
    const cards = await cache.read('c1', cardsAnalyser);
    expect(new Set(cards?.readings.map(({ text }) => text))).toEqual(new Set([TEXT]));
    expect(cards?.how).toBe('searched');
    expect(await cache.read('c1', lookAnalyser)).toMatchObject({ from: 'whole-clip', durationSeconds: 6.4 });
    expect(await cache.read('c1', motionAnalyser)).toMatchObject({ frameCount: 96, rateHz: 15, width: 80 });
    expect((await cache.read('c1', stillsAnalyser))?.stills).toHaveLength(96);
    const again = await watchClip(cache, { ...clip, path: '/nowhere.mp4' }, { threads: 1 });
    expect(again).toEqual({ ...first, ffmpegCpuSeconds: 0 });
  });

  test('counts once for each set of options, and not at all without the motion', async () => {
    const { place, cache } = openCache();
    expect(await readClipMovement(cache, 'c1', OPTIONS)).toBeNull();
    await watchClip(cache, clip, { threads: 1 });
    expect(await recallMovement(cache, 'c1', OPTIONS)).toBeNull();
    const movement = await readClipMovement(cache, 'c1', OPTIONS);
    expect(movement?.camera.widthsPerSecond).toBeLessThan(0.1);
    expect(await recallMovement(cache, 'c1', OPTIONS)).toEqual(movement);
    await unlink(join(place, 'c1.motion.bin'));
    expect(await readClipMovement(cache, 'c1', OPTIONS)).toEqual(movement);
    const bySide = { ...OPTIONS, reps: { counting: 'side' as const } };
    expect(await readClipMovement(cache, 'c1', bySide)).toBeNull();
    expect(await recallWatch(cache, 'c1')).toBeNull();
  });

  test('after a first look that left the card open keeps that look’s readings', async () => {
    const { cache } = openCache();
    const look = await lookAtClip(cache, brief);
    expect(look.readings.map(({ text }) => text)).toEqual([TEXT]);
    expect((await cache.read('brief', cardsAnalyser))?.how).toBe('key-pictures');
    await watchClip(cache, brief, { threads: 1 });
    const cards = await cache.read('brief', cardsAnalyser);
    expect(cards?.how).toBe('searched');
    expect(cards?.readings.length).toBeGreaterThan(look.readings.length);
    expect(cards?.readings).toEqual(expect.arrayContaining([look.readings[0]]));
  });

  test('does not search again for a card that the first look has settled', async () => {
    const { cache } = openCache();
    const look = await lookAtClip(cache, clip);
    expect(look.readings.map(({ text }) => text)).toEqual([TEXT, TEXT]);
    await watchClip(cache, clip, { threads: 1 });
    const cards = await cache.read('c1', cardsAnalyser);
    expect(cards).toEqual({ readings: look.readings, problems: [], how: 'key-pictures' });
  });

  test('leaves better than a first look that began before it and ends after it', async () => {
    const [{ cache, place }, other] = [openCache(), openCache()];
    await watchClip(other.cache, clip, { threads: 1 });
    const looking = lookAtClip(cache, clip);
    // Long after the look has asked the cache, and long before it has decoded anything.
    await delay(20);
    for (const part of ['cards.json', 'look.json', 'stills.bin']) {
      await mkdir(place, { recursive: true });
      await copyFile(join(other.place, `c1.${part}`), join(place, `c1.${part}`));
    }
    expect((await looking).look.from).toBe('whole-clip');
    expect((await cache.read('c1', lookAnalyser))?.from).toBe('whole-clip');
    expect((await cache.read('c1', cardsAnalyser))?.how).toBe('searched');
    expect((await cache.read('c1', stillsAnalyser))?.stills).toHaveLength(96);
  });

  test.each([
    ['motion', async (cache: EvidenceCache) => readClipMovement(cache, 'c1', OPTIONS)],
    ['stills', async (cache: EvidenceCache) => readStrip(cache, 'c1', [{ number: 1, atSeconds: 1 }])],
  ])('is done again where its %s cannot be read', async (part, ask) => {
    const { place, cache } = openCache();
    await watchClip(cache, clip, { threads: 1 });
    await ask(cache);
    expect(await recallWatch(cache, 'c1')).not.toBeNull();
    await truncate(join(place, `c1.${part}.bin`), 1000);
    await rm(join(place, `c1.movement-${getOptionsKey(OPTIONS)}.bin`), { force: true });
    await ask(cache);
    expect(await recallWatch(cache, 'c1')).toBeNull();
    expect((await watchClip(cache, clip, { threads: 1 })).ffmpegCpuSeconds).toBeGreaterThan(0);
    expect(await recallWatch(cache, 'c1')).not.toBeNull();
    expect(await readClipMovement(cache, 'c1', OPTIONS)).not.toBeNull();
  });

  test('is done again, and its reps counted again, where what they were read from is another version’s', async () => {
    const { place, cache } = openCache();
    await watchClip(cache, clip, { threads: 1 });
    await readClipMovement(cache, 'c1', OPTIONS);
    const file = join(place, `c1.movement-${getOptionsKey(OPTIONS)}.bin`);
    const kept = await readFile(file, 'latin1');
    const { version } = defineMovementAnalyser('');
    const older = version - 1000;
    expect(Math.floor(version / 1000)).toBe(motionAnalyser.version);
    await writeFile(file, kept.replace(`{"analyser":${version}`, `{"analyser":${older}`), 'latin1');
    expect(await recallMovement(cache, 'c1', OPTIONS)).toBeNull();
    for (const part of ['motion', 'stills', 'look']) {
      const watch = await cache.read('c1', watchAnalyser);
      if (!watch) throw new Error('the clip was watched');
      await cache.write('c1', watchAnalyser, { ...watch, parts: { ...watch.parts, [part]: 0 } });
      expect(await recallWatch(cache, 'c1'), part).toBeNull();
      await cache.write('c1', watchAnalyser, watch);
    }
  });

  test('whose sound begins before its pictures keeps the clip’s own times', async () => {
    const { cache } = openCache();
    const path = join(folder, 'late.mp4');
    const found = await findFfmpeg();
    if (!found.ok) throw new Error('these tests need ffmpeg');
    const sound = ['-f', 'lavfi', '-i', 'anullsrc', '-itsoffset', '2', '-i', brief.path];
    const output = ['-map', '0:a', '-map', '1:v', '-c:v', 'copy', '-t', '5', path];
    await promisify(execFile)(found.value.path, ['-v', 'error', '-y', ...sound, ...output]);
    await watchClip(cache, { path, contentId: 'late' }, { threads: 1 });
    const [first] = (await cache.read('late', stillsAnalyser))?.stills ?? [];
    expect(first?.atSeconds).toBeCloseTo(2, 1);
    expect((await cache.read('late', motionAnalyser))?.fromSeconds).toBeCloseTo(2, 1);
  });

  test('that breaks off keeps what was seen, with the problem', async () => {
    const { cache } = openCache();
    const path = await filmClip(join(folder, 'cut.mkv'), { shots: [{ seconds: 8 }] });
    await truncate(path, Math.round(statSync(path).size * 0.5));
    const watched = await watchClip(cache, { path, contentId: 'cut' }, { threads: 1 });
    expect(watched.problems).toMatchObject([{ code: 'decode-cut-short' }]);
    expect((await cache.read('cut', motionAnalyser))?.frameCount).toBeGreaterThan(30);
    expect(await watchClip(cache, { path: '/nowhere', contentId: 'cut' })).toMatchObject({
      ffmpegCpuSeconds: 0,
    });
  });

  test('that is stopped leaves nothing behind', async () => {
    const { place, cache } = openCache();
    const controller = new AbortController();
    const watching = watchClip(cache, clip, { threads: 1, signal: controller.signal });
    setTimeout(() => controller.abort(), 30);
    expect((await watching).problems).toEqual([{ code: 'decode-cancelled' }]);
    expect(await readdir(place).catch(() => [])).toEqual([]);
  });

  test('of something that is no clip keeps that nothing can be seen', async () => {
    const { cache } = openCache();
    const path = join(folder, 'notes.mp4');
    await writeFile(path, 'Laps: 2, 2, 1.');
    const watched = await watchClip(cache, { path, contentId: 'notes' });
    expect(watched.problems).toMatchObject([{ code: 'decode-failed' }]);
    expect(await recallWatch(cache, 'notes')).toMatchObject({ problems: watched.problems });
    expect(await readClipMovement(cache, 'notes', OPTIONS)).toBeNull();
  });
});

describe('a strip', () => {
  const wanted = [0.5, 1.02, 5.9].map((atSeconds, at) => ({ number: at + 1, atSeconds }));

  test('shows the kept picture nearest to each moment', async () => {
    const { cache } = openCache();
    await watchClip(cache, clip, { threads: 1 });
    const strip = await readStrip(cache, 'c1', wanted);
    expect(strip.map(({ number }) => number)).toEqual([1, 2, 3]);
    for (const { atSeconds, shownSeconds, jpeg } of strip) {
      expect(Math.abs(shownSeconds - atSeconds)).toBeLessThan(0.034);
      expect([jpeg[0], jpeg[1]]).toEqual([0xff, 0xd8]);
    }
  });

  test('is there after a first look, from fewer pictures', async () => {
    const { cache } = openCache();
    await lookAtClip(cache, clip);
    const strip = await readStrip(cache, 'c1', wanted);
    expect(strip.map(({ shownSeconds }) => Math.round(shownSeconds))).toEqual([0, 1, 6]);
  });

  test('is empty for a clip that nobody looked at', async () => {
    expect(await readStrip(openCache().cache, 'c1', wanted)).toEqual([]);
  });
});
