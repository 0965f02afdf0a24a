import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { readdirSync, readFileSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { availableParallelism, tmpdir } from 'node:os';
import path from 'node:path';
import { performance } from 'node:perf_hooks';
import { createAnalysisPool } from '../../src-core/host/analysis-pool.ts';
import { findFfmpeg } from '../../src-core/host/find-ffmpeg.ts';
import { BENCH_WAYS, type BenchWay, getBenchClip } from './bench-clips.ts';

const ROUNDS = 3;
const CLIP_SECONDS = 20;

/** What one way of working through a clip took, in seconds. */
interface Cost {
  readonly wall: number;
  readonly cpu: number;
}

/**
 * Prints what watching a clip whole costs beside decoding the same file and throwing the pictures away
 * (`ffmpeg -f null`), processor and wall time, in turns within one run; then a first look at fifty clips, and the
 * memory that ten minutes of 1080p take.
 */
export async function benchCost(print: (line: string) => void): Promise<void> {
  const found = await findFfmpeg();
  if (!found.ok) return print('cost: skipped, no ffmpeg that runs');
  const ffmpeg = found.value.path;
  for (const way of BENCH_WAYS) await benchWatch(way, ffmpeg, print);
  await benchLook(ffmpeg, print);
  await benchMemory(ffmpeg, print);
}

async function benchWatch(way: BenchWay, ffmpeg: string, print: (line: string) => void): Promise<void> {
  const file = await getBenchClip(way, CLIP_SECONDS, ffmpeg);
  const bar = way.startsWith('hevc') ? 1 : 1.25;
  const discards: Cost[] = [];
  const watches: Cost[] = [];
  await warmUp();
  for (let round = 0; round < ROUNDS; round += 1) {
    discards.push(await discard(ffmpeg, file));
    watches.push(await watch(file));
  }
  const ratio = (part: keyof Cost) =>
    (median(watches.map((cost) => cost[part])) / median(discards.map((cost) => cost[part]))).toFixed(2);
  const seconds = median(watches.map(({ cpu }) => cpu)).toFixed(2);
  print(
    `watching ${CLIP_SECONDS} s of 1080p30 ${way} whole: ${ratio('cpu')} of decode-and-discard in processor time ` +
      `(${seconds} s), ${ratio('wall')} in wall time (at most ${bar})`,
  );
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

let pool = createAnalysisPool();

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
    const clip = { path: file, contentId: 'clip' };
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
async function benchLook(ffmpeg: string, print: (line: string) => void): Promise<void> {
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
          clip: { path: file, contentId: `c${at}` },
        }),
      ),
    );
    const wall = (performance.now() - began) / 1000;
    const { user, system } = process.cpuUsage(before);
    const ffmpegCpu = looks.reduce((sum, look) => sum + (look.ok ? look.value.ffmpegCpuSeconds : 0), 0);
    await rm(cacheFolder, { recursive: true });
    const cpu = ffmpegCpu + (user + system) / 1e6;
    print(
      `a first look at ${LOOK_CLIPS} clips of ${LOOK_SECONDS} s ${way}: ${wall.toFixed(1)} s, ` +
        `${(wall / (once.wall * LOOK_CLIPS)).toFixed(3)} of decode-and-discard in wall time, ` +
        `${(cpu / (once.cpu * LOOK_CLIPS)).toFixed(3)} in processor time (at most 0.1)`,
    );
  }
}

const MEMORY_STEP_MS = 100;

/** The most that this process and its ffmpeg hold of their own while ten minutes are watched; Linux alone tells. */
async function benchMemory(ffmpeg: string, print: (line: string) => void): Promise<void> {
  if (process.platform !== 'linux') return print('memory: skipped, only Linux tells what a process holds');
  const file = await getBenchClip('h264-plain', 600, ffmpeg);
  await pool.close();
  pool = createAnalysisPool(1);
  let most = 0;
  const timer = setInterval(() => {
    most = Math.max(most, measureTree(process.pid));
  }, MEMORY_STEP_MS);
  await watch(file);
  clearInterval(timer);
  await pool.close();
  print(
    `memory of the process tree, ten minutes of 1080p: ${(most / 1e6).toFixed(0)} MB of its own (below 300)`,
  );
}

/** Anonymous memory of a process and its children, in bytes. */
function measureTree(pid: number): number {
  const children = readdirSync('/proc')
    .filter((name) => /^\d+$/.test(name))
    .filter((name) => readStatus(name, 'PPid') === pid)
    .map(Number);
  return children.reduce((sum, child) => sum + measureTree(child), readStatus(String(pid), 'RssAnon') * 1024);
}

function readStatus(pid: string, field: string): number {
  try {
    return Number(
      new RegExp(`^${field}:\\s*(\\d+)`, 'm').exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1],
    );
  } catch {
    return 0;
  }
}

function median(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;
}
