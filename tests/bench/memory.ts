import { readdirSync, readFileSync } from 'node:fs';
import { findFfmpeg } from '../../src-core/host/find-ffmpeg.ts';
import { startRoutemark } from '../app/command-line.ts';
import { getBenchClip } from './bench-clips.ts';
import type { BenchReport } from './report.ts';

const STEP_MS = 100;
const LONG_SECONDS = 600;
const SHORT_SECONDS = 60;

/**
 * Prints the most that `routemark evidence` holds of its own over ten minutes of 1080p, command line, threads and ffmpeg
 * together, and how much of that a minute's clip does not need. Linux alone tells what a process holds.
 */
export async function benchMemory({ print, hold }: BenchReport): Promise<void> {
  const found = await findFfmpeg();
  if (process.platform !== 'linux' || !found.ok) return print('memory: skipped, needs Linux and ffmpeg');
  const [short, long] = [
    await measure(await getBenchClip('h264-plain', SHORT_SECONDS, found.value.path)),
    await measure(await getBenchClip('h264-plain', LONG_SECONDS, found.value.path)),
  ];
  hold({ what: 'memory, ten minutes of 1080p, MB', figure: long / 1e6, bar: ['at most', 300], digits: 0 });
  const perMinute = (long - short) / 1e6 / ((LONG_SECONDS - SHORT_SECONDS) / 60);
  hold({ what: 'memory, growth with each minute, MB', figure: perMinute, bar: ['at most', 8], digits: 1 });
}

async function measure(file: string): Promise<number> {
  return (await measureRoutemark(['evidence', file, '--json'])).bytes;
}

/** The most anonymous memory of a command's whole process tree at any one moment, and how long it took, its start included. */
export async function measureRoutemark(
  args: readonly string[],
): Promise<{ readonly bytes: number; readonly seconds: number; readonly stdout: string }> {
  const beganMs = performance.now();
  const { child, ended } = startRoutemark(args);
  let most = 0;
  const timer = setInterval(() => {
    most = Math.max(most, measureTree(child.pid ?? 0));
  }, STEP_MS);
  const { code, stdout, stderr } = await ended;
  clearInterval(timer);
  if (code !== 0) throw new Error(stderr);
  return { bytes: most, seconds: (performance.now() - beganMs) / 1000, stdout };
}

function measureTree(root: number): number {
  const parents = new Map(
    readdirSync('/proc')
      .filter((name) => /^\d+$/.test(name))
      .map((name) => [Number(name), readStatus(name, 'PPid')] as const),
  );
  const isInTree = (pid: number | undefined): boolean =>
    pid === root || (pid !== undefined && pid > 0 && isInTree(parents.get(pid)));
  return [...parents.keys()]
    .filter(isInTree)
    .reduce((sum, pid) => sum + readStatus(String(pid), 'RssAnon') * 1024, 0);
}

/** A number of a process's status; 0 where the process is gone. */
function readStatus(pid: string, field: string): number {
  try {
    const status = readFileSync(`/proc/${pid}/status`, 'utf8');
    return Number(new RegExp(`^${field}:\\s*(\\d+)`, 'm').exec(status)?.[1] ?? 0);
  } catch {
    return 0;
  }
}
