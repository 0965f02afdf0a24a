import { mkdir, readFile } from 'node:fs/promises';
import { availableParallelism } from 'node:os';
import path from 'node:path';
import { buffer } from 'node:stream/consumers';
import PQueue from 'p-queue';
import { writeFileAtomically } from '../atomic-write.ts';
import { runFfmpeg } from '../ffmpeg.ts';
import { findFfmpeg } from '../find-ffmpeg.ts';

/** One picture of a clip. */
export interface StillOrder {
  /** The lesson folder. */
  readonly folder: string;
  readonly clip: string;
  readonly file: string;
  /** From the clip's beginning. */
  readonly atMs: number;
  /** In pixels. */
  readonly height: number;
}

/** One picture is a matter of a second; a clip that takes longer is given up. */
const LIMIT_SECONDS = 20;

const cutting = new PQueue({ concurrency: availableParallelism() });

const underWay = new Map<string, Promise<Uint8Array | null>>();

/** A picture as JPEG, from the evidence cache or cut now; null where the clip gives none there. */
export async function readStill(order: StillOrder): Promise<Uint8Array | null> {
  const name = `${order.clip}-${order.atMs}-${order.height}.jpg`;
  const kept = path.join(order.folder, 'evidence', 'stills', name);
  const known = await readFile(kept).catch(() => null);
  if (known) return known;
  const cut = underWay.get(kept) ?? cutting.add(() => cutStill(order, kept));
  underWay.set(kept, cut);
  return cut.finally(() => underWay.delete(kept));
}

async function cutStill({ file, atMs, height }: StillOrder, kept: string): Promise<Uint8Array | null> {
  const ffmpeg = await findFfmpeg();
  if (!ffmpeg.ok) return null;
  const run = runFfmpeg(ffmpeg.value, {
    inputs: [{ path: file, options: ['-ss', (atMs / 1000).toFixed(3)] }],
    filters: [`[0:v:0]scale=-2:${height},format=yuvj420p[out]`],
    output: ['-frames:v', '1', '-c:v', 'mjpeg', '-q:v', '4', '-f', 'image2pipe'],
    limitSeconds: LIMIT_SECONDS,
    onLine: () => {},
  });
  const [bytes] = await Promise.all([buffer(run.output), run.ended]);
  if (bytes.length === 0) return null;
  // What cannot be kept is cut again next time.
  await mkdir(path.dirname(kept), { recursive: true }).catch(() => {});
  await writeFileAtomically(kept, bytes);
  return bytes;
}
