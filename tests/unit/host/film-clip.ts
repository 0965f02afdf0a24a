import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { once } from 'node:events';
import { existsSync } from 'node:fs';
import { copyFile, mkdir, rename } from 'node:fs/promises';
import { extname, join } from 'node:path';
import { findFfmpeg } from '../../../src-core/host/find-ffmpeg.ts';
import { placeBuilds } from '../../app/bundle-program.ts';
import { drawScene, type Scene, type SceneCard } from './draw-scene.ts';

/** A stretch of film that shows one thing. */
export interface Shot {
  readonly seconds: number;
  readonly card?: SceneCard | ((atSeconds: number) => SceneCard);
  readonly background?: Scene['background'];
}

/** How a clip is made. */
export interface Film {
  readonly shots: readonly Shot[];
  /** Pictures a second, 30 unless given. */
  readonly rate?: number;
  readonly width?: number;
  readonly height?: number;
  /** Options before the output; the codec unless given is H.264 with a key picture a second. */
  readonly options?: readonly string[];
}

const H264 = ['-c:v', 'libx264', '-preset', 'ultrafast', '-crf', '26', '-g', '30', '-pix_fmt', 'yuv420p'];

/** Films shots with sensor noise into a real file. The same shots are filmed once a run, and are its own to spoil. */
export async function filmClip(path: string, film: Film): Promise<string> {
  // What is drawn anew for each moment has no text that tells it from another.
  if (film.shots.some(({ card }) => typeof card === 'function')) return filmShots(path, film);
  const folder = join(placeBuilds(), 'clips');
  await mkdir(folder, { recursive: true });
  const digest = createHash('sha256').update(JSON.stringify(film)).digest('hex');
  const kept = join(folder, `${digest}${extname(path)}`);
  if (!existsSync(kept)) {
    const draft = join(folder, `${process.pid}-${digest}${extname(path)}`);
    await rename(await filmShots(draft, film), kept);
  }
  await copyFile(kept, path);
  return path;
}

async function filmShots(path: string, film: Film): Promise<string> {
  const found = await findFfmpeg();
  if (!found.ok) throw new Error('these tests need ffmpeg');
  const { rate = 30, width = 640, height = 360 } = film;
  const input = [
    '-f',
    'rawvideo',
    '-pix_fmt',
    'gray',
    '-s',
    `${width}x${height}`,
    '-r',
    String(rate),
    '-i',
    'pipe:0',
  ];
  const args = ['-v', 'error', '-y', ...input, '-vf', 'noise=alls=8:allf=t', ...(film.options ?? H264), path];
  const ffmpeg = spawn(found.value.path, args, { stdio: ['pipe', 'ignore', 'pipe'] });
  let complaint = '';
  ffmpeg.stderr.on('data', (data) => {
    complaint += data;
  });
  const closed = once(ffmpeg, 'close');
  for (const picture of drawPictures(film, { rate, width, height })) {
    if (!ffmpeg.stdin.write(picture)) await once(ffmpeg.stdin, 'drain');
  }
  ffmpeg.stdin.end();
  const [code] = await closed;
  if (code !== 0) throw new Error(complaint);
  return path;
}

function* drawPictures(
  film: Film,
  size: { rate: number; width: number; height: number },
): Generator<Uint8Array> {
  const drawn = new Map<string, Uint8Array>();
  let number = 0;
  for (const [at, shot] of film.shots.entries()) {
    for (let count = Math.round(shot.seconds * size.rate); count > 0; count--, number++) {
      const card = typeof shot.card === 'function' ? shot.card(number / size.rate) : shot.card;
      const key = `${at} ${card?.text}`;
      const scene: Scene = { ...size, seed: at, background: shot.background ?? 'blobs', card: card ?? null };
      const picture = drawn.get(key) ?? drawScene(scene).luma;
      drawn.set(key, picture);
      yield picture;
    }
  }
}
