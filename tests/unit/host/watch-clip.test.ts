import { statSync } from 'node:fs';
import { mkdtemp, readdir, rm, truncate, unlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import {
  cardsAnalyser,
  lookAnalyser,
  motionAnalyser,
  stillsAnalyser,
} from '../../../src-core/host/analysers.ts';
import { createAnalysisPool } from '../../../src-core/host/analysis-pool.ts';
import { openEvidenceCache } from '../../../src-core/host/evidence-cache.ts';
import { lookAtClip } from '../../../src-core/host/look-at-clip.ts';
import { readClipMovement, recallMovement } from '../../../src-core/host/read-clip-movement.ts';
import { readStrip } from '../../../src-core/host/read-strip.ts';
import { recallWatch, watchClip } from '../../../src-core/host/watch-clip.ts';
import { formatStationCard } from '../../../src-core/lesson/card-text.ts';
import { filmClip } from './film-clip.ts';
import { makeTemporaryFolder } from './temporary-folder.ts';

const TEXT = formatStationCard({ lesson: 'HARBOUR', station: 'A', revision: 2 });
const OPTIONS = { reps: { counting: 'cycle' as const }, unison: { toleranceSeconds: 0.35 } };

let folder = '';
let clip = { path: '', contentId: 'c1' };

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'watch-'));
  const card = { text: TEXT, pixelsPerModule: 4, turnDegrees: 8, tilt: 0.1 };
  const shots = [{ seconds: 1.4, card }, { seconds: 5 }];
  clip = { ...clip, path: await filmClip(join(folder, 'clip.mp4'), { shots }) };
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

  test('after a first look keeps that look’s readings', async () => {
    const { cache } = openCache();
    const look = await lookAtClip(cache, clip);
    expect(look.readings.map(({ text }) => text)).toContain(TEXT);
    expect((await cache.read('c1', cardsAnalyser))?.how).toBe('key-pictures');
    await watchClip(cache, clip, { threads: 1 });
    const cards = await cache.read('c1', cardsAnalyser);
    expect(cards?.readings.length).toBeGreaterThan(look.readings.length);
    expect(cards?.readings).toEqual(expect.arrayContaining([look.readings[0]]));
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

describe('the analysis threads', () => {
  test('give what the same work gives without them', async () => {
    const [own, other] = [openCache(), openCache()];
    const pool = createAnalysisPool(2);
    const task = { cacheFolder: other.place, clip };
    const watched = await pool.run({ ...task, kind: 'watch', threads: 1 });
    const moved = await pool.run({ ...task, kind: 'movement', options: OPTIONS });
    await pool.close();
    const alone = await watchClip(own.cache, clip, { threads: 1 });
    expect(watched.ok && watched.value.print).toEqual(alone.print);
    expect(moved.ok && moved.value).toEqual(await readClipMovement(own.cache, 'c1', OPTIONS));
    expect(watched.ok && watched.threadCpuSeconds).toBeGreaterThan(0);
  });

  test('take the opened clip first', async () => {
    const pool = createAnalysisPool(1);
    const order: string[] = [];
    const ask = (contentId: string, priority: number) =>
      pool
        .run(
          { kind: 'movement', cacheFolder: folder, clip: { path: '', contentId }, options: OPTIONS },
          { priority },
        )
        .then(() => order.push(contentId));
    await Promise.all([ask('under way', 0), ask('waiting', 0), ask('opened', 10)]);
    await pool.close();
    expect(order).toEqual(['under way', 'opened', 'waiting']);
  });

  test('stop when asked, and work on', async () => {
    const { place } = openCache();
    const pool = createAnalysisPool(1);
    const controller = new AbortController();
    const task = { cacheFolder: place, clip, kind: 'watch', threads: 1 } as const;
    const stopped = pool.run(task, { signal: controller.signal });
    setTimeout(() => controller.abort(), 300);
    const end = await stopped;
    if (end.ok && end.value.problems.length > 0) {
      expect(end.value.problems).toEqual([{ code: 'decode-cancelled' }]);
    }
    const refused = await pool.run(task, { signal: controller.signal });
    expect(refused).toEqual({ ok: false, problem: { code: 'decode-cancelled' } });
    const after = await pool.run(task);
    expect(after.ok && after.value.problems).toEqual([]);
    await pool.close();
  });

  test('that end under a task end that task alone', async () => {
    const pool = createAnalysisPool(1);
    const { place } = openCache();
    const lost = pool.run({ cacheFolder: place, clip, kind: 'watch', threads: 1 });
    setTimeout(() => pool.close(), 50);
    expect(await lost).toMatchObject({ ok: false, problem: { code: 'analysis-failed' } });
    const after = await pool.run({ cacheFolder: place, clip, kind: 'movement', options: OPTIONS });
    expect(after).toMatchObject({ ok: true, value: null });
    await pool.close();
  });
});
