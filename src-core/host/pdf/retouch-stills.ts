import { Readable } from 'node:stream';
import { buffer } from 'node:stream/consumers';
import { runFfmpeg } from '../ffmpeg.ts';
import { findFfmpeg } from '../find-ffmpeg.ts';
import { readAspect } from './draw-pages.ts';

/** What stills look like on paper. */
export interface StillLook {
  readonly isBlurred: boolean;
  readonly isGrey: boolean;
}

/**
 * Longer side of a blurred still in pixels. A face as high as the whole film is then nine pixels high: faces that are
 * known well were named half of the time at 7 by 10 pixels (Sinha, Balas, Ostrovsky & Russell, "Face recognition by
 * humans: nineteen results", Proc. IEEE 94, 2006, result 1; from memory), and pupils stand farther away than that.
 */
const BLURRED_SIDE = 16;

/** Longer side to which a blurred still is drawn out again, so that it shows soft spots and not tiles. */
const SMOOTH_SIDE = 128;

const LIMIT_SECONDS = 60;

/**
 * JPEG stills of one clip, blurred, grey, or as they are. Whatever cannot be retouched is null: never does a sharp
 * picture take the place of a blurred one.
 */
export async function retouchStills(
  stills: readonly (Uint8Array | null)[],
  look: StillLook,
): Promise<readonly (Uint8Array | null)[]> {
  const given = stills.filter((still) => still !== null);
  const [first] = given;
  if (!first || (!look.isBlurred && !look.isGrey)) return stills;
  const made = await run(given, listFilters(readAspect(first), look));
  if (made.length !== given.length) return stills.map(() => null);
  const left = [...made];
  return stills.map((still) => (still === null ? null : (left.shift() ?? null)));
}

/** Averages over squares first, so that nothing finer is left to be drawn out. */
function listFilters(aspect: number, { isBlurred, isGrey }: StillLook): string {
  const scaleTo = (side: number, how: string) => {
    const [w, h] = aspect >= 1 ? [side, side / aspect] : [side * aspect, side];
    return `scale=${Math.max(1, Math.round(w))}:${Math.max(1, Math.round(h))}:flags=${how}`;
  };
  return [
    ...(isBlurred ? [scaleTo(BLURRED_SIDE, 'area'), scaleTo(SMOOTH_SIDE, 'bicubic')] : []),
    ...(isGrey ? ['hue=s=0'] : []),
    'format=yuvj420p',
  ].join(',');
}

async function run(stills: readonly Uint8Array[], filters: string): Promise<readonly Uint8Array[]> {
  const ffmpeg = await findFfmpeg();
  if (!ffmpeg.ok) return [];
  const { output, ended } = runFfmpeg(ffmpeg.value, {
    inputs: [{ stream: Readable.from(stills), options: ['-f', 'image2pipe', '-c:v', 'mjpeg'] }],
    filters: [`[0:v:0]${filters}[out]`],
    output: ['-c:v', 'mjpeg', '-q:v', '4', '-f', 'image2pipe'],
    limitSeconds: LIMIT_SECONDS,
    onLine: () => {},
  });
  const [bytes, end] = await Promise.all([buffer(output), ended]);
  return end.reason === 'done' ? splitJpegs(bytes) : [];
}

/** An end of image, then a start of image: two markers that stand side by side nowhere within a picture. */
const SEAM = Buffer.from([0xff, 0xd9, 0xff, 0xd8]);

function splitJpegs(bytes: Buffer): readonly Uint8Array[] {
  const pictures: Uint8Array[] = [];
  for (let from = 0; from < bytes.length; ) {
    const seam = bytes.indexOf(SEAM, from);
    const to = seam < 0 ? bytes.length : seam + 2;
    pictures.push(bytes.subarray(from, to));
    from = to;
  }
  return pictures;
}
