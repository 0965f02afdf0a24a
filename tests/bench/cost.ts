import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, rm } from 'node:fs/promises';
import { availableParallelism, tmpdir } from 'node:os';
import path from 'node:path';
import { performance } from 'node:perf_hooks';
import { createAnalysisPool } from '../../src-core/host/analysis-pool.ts';
import { findFfmpeg } from '../../src-core/host/find-ffmpeg.ts';
import { BENCH_WAYS, type BenchWay, getBenchClip } from './bench-clips.ts';
import type { BenchReport } from './report.ts';

const ROUNDS = 3;
const CLIP_SECONDS = 20;

/** What one way of working through a clip took, in seconds. */
interface Cost {
  readonly wall: number;
  readonly cpu: number;
}

/**
 * Prints what watching a clip whole costs beside decoding the same file and throwing the pictures away
 * (`ffmpeg -f null`), processor and wall time, in turns within one run; then a first look at fifty clips.
 */
export async function benchCost(report: BenchReport): Promise<void> {
  const found = await findFfmpeg();
  if (!found.ok) return report.print('cost: skipped, no ffmpeg that runs');
  const ffmpeg = found.value.path;
  for (const way of BENCH_WAYS) await benchWatch(way, ffmpeg, report);
  await benchLook(ffmpeg, report);
  await pool.close();
}

async function benchWatch(way: BenchWay, ffmpeg: string, report: BenchReport): Promise<void> {
  const file = await getBenchClip(way, CLIP_SECONDS, ffmpeg);
  const bar = way.startsWith('hevc') ? 1 : 1.25;
  const discards: Cost[] = [];
  const watches: Cost[] = [];
  await warmUp();
  for (let round = 0; round < ROUNDS; round += 1) {
    discards.push(await discard(ffmpeg, file));
    watches.push(await watch(file));
  }
  for (const part of ['cpu', 'wall'] as const) {
    const figure = median(watches.map((cost) => cost[part])) / median(discards.map((cost) => cost[part]));
    report.hold({
      what: `watching ${CLIP_SECONDS} s of 1080p30 ${way}, ${part}, of decode-and-discard`,
      figure,
      bar: ['at most', bar],
      digits: 2,
    });
  }
}

/** Decodes everything and keeps nothing, as ffmpeg does by itself. */
async function discard(ffmpeg: string, file: string): Promise<Cost> {
  const began = performance.now();
  const child = spawn(ffmpeg, ['-v', 'info', '-benchmark', '-i', file, '-map', '0:v', '-f', 'null', '-'], {
    stdio: ['ignore', 'ignore', 'pipe'],
  });
  let said = '';
  child.stderr.on('data', (data) => {
    said = (said + data).slice(-4000);
  });
  await once(child, 'close');
  const times = /utime=([\d.]+)s stime=([\d.]+)s/.exec(said);
  return { wall: (performance.now() - began) / 1000, cpu: Number(times?.[1]) + Number(times?.[2]) };
}

const pool = createAnalysisPool();

/** The first task of a thread pays for loading the program, once for a whole class. */
async function warmUp(): Promise<void> {
  const cacheFolder = path.join(tmpdir(), 'routemark-bench-none');
  const options = { reps: { counting: 'cycle' as const }, unison: { toleranceSeconds: 0.35 } };
  const clip = { path: '', contentId: 'none' };
  await Promise.all(
    Array.from({ length: availableParallelism() }, () =>
      pool.run({ kind: 'movement', cacheFolder, clip, options }),
    ),
  );
}

/** Watching, counting and measuring, from the file to the entries on the disk. */
async function watch(file: string): Promise<Cost> {
  const cacheFolder = await mkdtemp(path.join(tmpdir(), 'routemark-bench-'));
  try {
    const clip = { path: file, contentId: 'clip', durationSeconds: CLIP_SECONDS };
    // As the desk does: every clip has been looked at before it is watched.
    await pool.run({ kind: 'look', cacheFolder, clip, searchCards: false });
    const before = process.cpuUsage();
    const began = performance.now();
    const seen = await pool.run({ kind: 'watch', cacheFolder, clip, threads: availableParallelism() });
    if (!seen.ok || seen.value.problems.length > 0) throw new Error(JSON.stringify(seen));
    const options = { reps: { counting: 'cycle' as const }, unison: { toleranceSeconds: 0.35 } };
    await pool.run({ kind: 'movement', cacheFolder, clip, options });
    const { user, system } = process.cpuUsage(before);
    const cpu = seen.value.ffmpegCpuSeconds + (user + system) / 1e6;
    return { wall: (performance.now() - began) / 1000, cpu };
  } finally {
    await rm(cacheFolder, { recursive: true });
  }
}

const LOOK_CLIPS = 50;
const LOOK_SECONDS = 40;

/** A class of fifty clips of 40 s, looked at side by side, beside decoding them one after another. */
async function benchLook(ffmpeg: string, report: BenchReport): Promise<void> {
  for (const way of ['h264-plain', 'hevc-uneven'] as const) {
    const file = await getBenchClip(way, LOOK_SECONDS, ffmpeg);
    const once = await discard(ffmpeg, file);
    const cacheFolder = await mkdtemp(path.join(tmpdir(), 'routemark-bench-'));
    const before = process.cpuUsage();
    const began = performance.now();
    const looks = await Promise.all(
      Array.from({ length: LOOK_CLIPS }, (_, at) =>
        pool.run({
          kind: 'look',
          searchCards: false,
          cacheFolder,
          // As the desk does, which has read the container before.
          clip: { path: file, contentId: `c${at}`, durationSeconds: LOOK_SECONDS },
        }),
      ),
    );
    const wall = (performance.now() - began) / 1000;
    const { user, system } = process.cpuUsage(before);
    const ffmpegCpu = looks.reduce((sum, look) => sum + (look.ok ? look.value.ffmpegCpuSeconds : 0), 0);
    await rm(cacheFolder, { recursive: true });
    const cpu = ffmpegCpu + (user + system) / 1e6;
    const ratios = { cpu: cpu / (once.cpu * LOOK_CLIPS), wall: wall / (once.wall * LOOK_CLIPS) };
    for (const part of ['cpu', 'wall'] as const) {
      report.hold({
        what: `first look at ${LOOK_CLIPS} clips of ${LOOK_SECONDS} s ${way}, ${part}, of decode-and-discard`,
        figure: ratios[part],
        bar: ['at most', 0.1],
      });
    }
  }
}

function median(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;
}
