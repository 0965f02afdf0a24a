import { mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setImmediate } from 'node:timers/promises';
import type { Worker } from 'node:worker_threads';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { createAnalysisPool } from '../../../src-core/host/analysis-pool.ts';
import { openEvidenceCache } from '../../../src-core/host/evidence-cache.ts';
import { readClipMovement } from '../../../src-core/host/read-clip-movement.ts';
import { watchClip } from '../../../src-core/host/watch-clip.ts';
import { filmClip } from './film-clip.ts';
import { makeTemporaryFolder } from './temporary-folder.ts';

const OPTIONS = { reps: { counting: 'cycle' as const }, unison: { toleranceSeconds: 0.35 } };

let folder = '';
let clip = { path: '', contentId: 'c1' };

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'threads-'));
  clip = { ...clip, path: await filmClip(join(folder, 'clip.mp4'), { shots: [{ seconds: 4 }] }) };
});

afterAll(() => rm(folder, { recursive: true }));

const openCache = () => {
  const place = join(makeTemporaryFolder(), 'evidence');
  return { place, cache: openEvidenceCache(place) };
};

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
    // The thread has its order by then, and hears of the stop right after it.
    await setImmediate();
    controller.abort();
    const end = await stopped;
    expect(end).toMatchObject({ ok: true, value: { problems: [{ code: 'decode-cancelled' }] } });
    expect(await readdir(place).catch(() => [])).toEqual([]);
    const refused = await pool.run(task, { signal: controller.signal });
    expect(refused).toEqual({ ok: false, problem: { code: 'decode-cancelled' } });
    const after = await pool.run(task);
    expect(after.ok && after.value.problems).toEqual([]);
    await pool.close();
  });

  test('that end while idle are replaced', async () => {
    const threads: Worker[] = [];
    const see = (thread: Worker) => threads.push(thread);
    process.on('worker', see);
    const pool = createAnalysisPool(1);
    const task = { cacheFolder: folder, clip, kind: 'movement', options: OPTIONS } as const;
    expect(await pool.run(task)).toMatchObject({ ok: true, value: null });
    await Promise.all(threads.map((thread) => thread.terminate()));
    expect(await pool.run(task)).toMatchObject({ ok: true, value: null });
    expect(threads).toHaveLength(2);
    await pool.close();
    process.off('worker', see);
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
