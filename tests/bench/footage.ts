import { execFile } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { findFfmpeg } from '../../src-core/host/find-ffmpeg.ts';
import { createMotionReader } from '../../src-core/signal/motion-reader.ts';
import type { MotionSeries } from '../../src-core/signal/motion-series.ts';

/** Real clips with counts written by the authors of their data set; for measuring alone, and not part of this project. */
export const FOOTAGE = fileURLToPath(new URL('../../../shared/footage/', import.meta.url));

/** A clip and its true count. */
export interface FootageClip {
  readonly file: string;
  readonly count: number;
}

/** The clips; null where the folder is absent. */
export function findFootage(): readonly FootageClip[] | null {
  const list = `${FOOTAGE}counts.json`;
  return existsSync(list) ? (JSON.parse(readFileSync(list, 'utf8')) as FootageClip[]) : null;
}

const RATE_HZ = 15;
const LONG_SIDE = 80;
const MAX_BYTES = 64 * 1024 * 1024;

/** A file's motion from small luma frames, 15 a second, long side 80. */
export async function readFileMotion(path: string): Promise<MotionSeries> {
  const ffmpeg = await findFfmpeg();
  if (!ffmpeg.ok) throw new Error('no ffmpeg');
  const size = await findSize(ffmpeg.value.path, path);
  const filter = `fps=${RATE_HZ},scale=${size.width}:${size.height}:flags=area,format=gray`;
  const luma = await run(ffmpeg.value.path, [
    '-v',
    'error',
    '-i',
    path,
    '-vf',
    filter,
    '-f',
    'rawvideo',
    '-',
  ]);
  const area = size.width * size.height;
  const reader = createMotionReader({ ...size, rateHz: RATE_HZ });
  for (let at = 0; at + area <= luma.length; at += area) reader.push(luma.subarray(at, at + area));
  return reader.finish();
}

async function findSize(ffmpeg: string, path: string): Promise<{ width: number; height: number }> {
  // One frame as a portable greymap tells the size after rotation: "P5 640 360 255".
  const still = await run(ffmpeg, [
    '-v',
    'error',
    '-i',
    path,
    '-frames:v',
    '1',
    '-f',
    'image2pipe',
    '-c:v',
    'pgm',
    '-',
  ]);
  const [, width = '0', height = '0'] = /^P5\s+(\d+)\s+(\d+)/.exec(still.toString('latin1', 0, 40)) ?? [];
  const scale = LONG_SIDE / Math.max(Number(width), Number(height));
  return { width: Math.round(Number(width) * scale), height: Math.round(Number(height) * scale) };
}

async function run(program: string, args: readonly string[]): Promise<Buffer> {
  const { stdout } = await promisify(execFile)(program, [...args], {
    encoding: 'buffer',
    maxBuffer: MAX_BYTES,
  });
  return stdout;
}
