import { execFile } from 'node:child_process';
import { access, mkdir, rename } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { makeFilm } from '../../fixtures/film/make-film.ts';
import { CLIPS } from '../../fixtures/harbour/clips.ts';
import { buildOrder } from '../../fixtures/harbour/orders.ts';

const run = promisify(execFile);

const FOLDER = fileURLToPath(new URL('../../node_modules/.cache/routemark/bench/', import.meta.url));

/** A tablet's way to write 1080p at 30 a second, and how ffmpeg is told to write so. */
const WAYS = {
  /** Constant reference pictures, a key picture a second: what phones' H.264 looks like. */
  'h264-plain': ['-c:v', 'libx264', '-preset', 'superfast', '-b:v', '14M', '-bf', '0', '-g', '30'],
  /** With pictures that no other leans on. */
  'h264-b': ['-c:v', 'libx264', '-preset', 'veryfast', '-b:v', '12M', '-bf', '3', '-g', '60'],
  'hevc-even': [
    '-c:v',
    'libx265',
    '-preset',
    'ultrafast',
    '-b:v',
    '8M',
    '-x265-params',
    'bframes=3:b-adapt=0:log-level=error',
    '-tag:v',
    'hvc1',
  ],
  'hevc-uneven': [
    '-c:v',
    'libx265',
    '-preset',
    'superfast',
    '-b:v',
    '8M',
    '-x265-params',
    'bframes=4:b-adapt=0:log-level=error',
    '-tag:v',
    'hvc1',
  ],
} as const;

/** How a bench clip is written. */
export type BenchWay = keyof typeof WAYS;

/** All ways, in the order to be measured. */
export const BENCH_WAYS = Object.keys(WAYS) as readonly BenchWay[];

/**
 * A clip of 1080p at 30 a second, so many seconds long: a demo film enlarged, looped and given a sensor's grain.
 * Made once and kept beside the other caches.
 */
export async function getBenchClip(way: BenchWay, seconds: number, ffmpeg: string): Promise<string> {
  await mkdir(FOLDER, { recursive: true });
  const file = path.join(FOLDER, `${way}-${seconds}.mp4`);
  const base = path.join(FOLDER, 'base.mp4');
  await make(base, async (draft) => {
    const row = CLIPS.find(
      ({ station, card, kept }) => station === 'A' && card !== false && kept === undefined,
    );
    if (!row) throw new Error('the demo has a film of station A');
    const { script, recording } = buildOrder(row, 1);
    const order = { script, recording: { ...recording, container: 'mp4', codec: 'h264' } as const };
    await makeFilm(order, draft, { ffmpeg, signal: new AbortController().signal });
  });
  // A long clip repeats a short one: encoding ten minutes would take longer than all the measuring.
  const unit = Math.min(20, seconds);
  const short = path.join(FOLDER, `${way}-${unit}.mp4`);
  const look = 'fps=30,scale=1920:1080:flags=bicubic,setsar=1,noise=alls=5:allf=t,format=yuv420p';
  await make(short, (draft) =>
    run(ffmpeg, [
      '-v',
      'error',
      '-y',
      '-stream_loop',
      '-1',
      '-i',
      base,
      '-t',
      `${unit}`,
      '-an',
      '-vf',
      look,
      ...WAYS[way],
      '-f',
      'mp4',
      draft,
    ]),
  );
  if (seconds > unit) {
    const loops = `${Math.ceil(seconds / unit) - 1}`;
    await make(file, (draft) =>
      run(ffmpeg, [
        '-v',
        'error',
        '-y',
        '-stream_loop',
        loops,
        '-i',
        short,
        '-c',
        'copy',
        '-t',
        `${seconds}`,
        '-f',
        'mp4',
        draft,
      ]),
    );
  }
  return file;
}

async function make(file: string, write: (draft: string) => Promise<unknown>): Promise<void> {
  const isThere = await access(file).then(
    () => true,
    () => false,
  );
  if (isThere) return;
  await write(`${file}.part`);
  await rename(`${file}.part`, file);
}
