import { mkdir, readFile } from 'node:fs/promises';
import { availableParallelism } from 'node:os';
import path from 'node:path';
import { buffer } from 'node:stream/consumers';
import PQueue from 'p-queue';
import { MS_PER_SECOND } from '../../platform/units.ts';
import { writeFileAtomically } from '../atomic-write.ts';
import { openEvidenceCache } from '../evidence-cache.ts';
import { type FfmpegCall, runFfmpeg } from '../ffmpeg.ts';
import { findFfmpeg } from '../find-ffmpeg.ts';
import { readStrip } from '../read-strip.ts';
import { splitJpegs } from './split-jpegs.ts';

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

/** A kept picture so near to the moment asked for shows the same, to whoever only wants to know the clip again. */
const NEAR_SECONDS = 0.5;

/** Kept pictures are 126 lines high; to be shown larger than this, one is cut. */
const KEPT_ENOUGH_HEIGHT = 180;

/**
 * A picture as JPEG: one that looking at the clip has left, where it is near enough and large enough, else one cut
 * before or now. Null where the clip gives none there.
 */
export async function readStill(order: StillOrder): Promise<Uint8Array | null> {
  const left = order.height <= KEPT_ENOUGH_HEIGHT ? await findLeft(order) : null;
  return left ?? readCut(order);
}

async function findLeft({ folder, clip, atMs }: StillOrder): Promise<Uint8Array | null> {
  const atSeconds = atMs / MS_PER_SECOND;
  const cache = openEvidenceCache(path.join(folder, 'evidence'));
  const [nearest] = await readStrip(cache, clip, [{ number: null, atSeconds }]);
  return nearest && Math.abs(nearest.shownSeconds - atSeconds) <= NEAR_SECONDS ? nearest.jpeg : null;
}

/**
 * Pictures of one clip at several moments, cut now in one run, for a sheet of paper: nothing is kept, for keeping them
 * safely takes longer than cutting them. Null where the clip gives none.
 */
export async function cutStills(
  clip: Omit<StillOrder, 'atMs' | 'folder'>,
  moments: readonly number[],
): Promise<readonly (Uint8Array | null)[]> {
  const together = await cutting.add(() => cutTogether(clip, moments));
  if (together) return together;
  // Where one moment lies beyond the last picture, the others are cut one by one.
  const singly = moments.map((atMs) => cutting.add(() => cutTogether(clip, [atMs])));
  return (await Promise.all(singly)).map((pictures) => pictures?.[0] ?? null);
}

/** A photo as JPEG of so many pixels' height, for a sheet of paper; null where the file is no picture. */
export async function readPhoto(file: string, height: number): Promise<Uint8Array | null> {
  const bytes = await cut({
    inputs: [{ path: file, options: [] }],
    filters: [`[0:v:0]scale=-2:${height},setsar=1,format=yuvj420p[out]`],
    output: ['-frames:v', '1', ...AS_JPEG],
  });
  return bytes.length === 0 ? null : bytes;
}

async function readCut(order: StillOrder): Promise<Uint8Array | null> {
  const name = `${order.clip}-${order.atMs}-${order.height}.jpg`;
  const kept = path.join(order.folder, 'evidence', 'stills', name);
  const known = await readFile(kept).catch(() => null);
  if (known) return known;
  const cut = underWay.get(kept) ?? cutting.add(() => cutStill(order, kept));
  underWay.set(kept, cut);
  return cut.finally(() => underWay.delete(kept));
}

async function cutStill(order: StillOrder, kept: string): Promise<Uint8Array | null> {
  const { file, atMs, height } = order;
  const bytes = await cut({
    inputs: [{ path: file, options: ['-ss', (atMs / MS_PER_SECOND).toFixed(3)] }],
    filters: [`[0:v:0]scale=-2:${height},format=yuvj420p[out]`],
    output: ['-frames:v', '1', ...AS_JPEG],
  });
  if (bytes.length === 0) return null;
  // What cannot be kept is cut again next time.
  await mkdir(path.dirname(kept), { recursive: true }).catch(() => {});
  await writeFileAtomically(kept, bytes);
  return bytes;
}

/** How far from a moment its picture is looked for, where several are cut in one run. */
const WITHIN_SECONDS = '2';

/** Null where not each moment gave a picture. */
async function cutTogether(
  { file, height }: Pick<StillOrder, 'file' | 'height'>,
  moments: readonly number[],
): Promise<readonly Uint8Array[] | null> {
  const names = moments.map((_, at) => `[p${at}]`);
  const picked = names.map(
    (name, at) => `[${at}:v:0]trim=end_frame=1,scale=-2:${height},setsar=1,format=yuvj420p${name}`,
  );
  const bytes = await cut({
    inputs: moments.map((atMs) => ({
      path: file,
      options: ['-threads', '1', '-ss', (atMs / MS_PER_SECOND).toFixed(3), '-t', WITHIN_SECONDS],
    })),
    filters: [...picked, `${names.join('')}concat=n=${moments.length}:v=1,settb=1/25,setpts=N[out]`],
    output: AS_JPEG,
  });
  const pictures = splitJpegs(bytes);
  return pictures.length === moments.length ? pictures : null;
}

const AS_JPEG = ['-c:v', 'mjpeg', '-q:v', '4', '-f', 'image2pipe'];

/** What ffmpeg gives; empty where it is not here. */
async function cut(call: Pick<FfmpegCall, 'inputs' | 'filters' | 'output'>): Promise<Buffer> {
  const ffmpeg = await findFfmpeg();
  if (!ffmpeg.ok) return Buffer.alloc(0);
  const run = runFfmpeg(ffmpeg.value, { ...call, limitSeconds: LIMIT_SECONDS, onLine: () => {} });
  const [bytes] = await Promise.all([buffer(run.output), run.ended]);
  return bytes;
}
