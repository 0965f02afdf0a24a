import { Readable } from 'node:stream';
import { buffer } from 'node:stream/consumers';
import { groupBy } from '../../platform/group-by.ts';
import { runFfmpeg } from '../ffmpeg.ts';
import { findFfmpeg } from '../find-ffmpeg.ts';
import { splitJpegs } from '../media/split-jpegs.ts';

/** The stills of one clip. */
export interface ClipPictures {
  /** JPEG files, in order; null where one could not be made. */
  readonly jpegs: readonly (Uint8Array | null)[];
  /** Width by height; of a usual film where there is no picture at all. */
  readonly aspect: number;
}

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

/** Longer side of a still that is not blurred, as watching leaves it. */
const SHARP_SIDE = 224;

/** A thousand stills are a matter of a few seconds; ten times that is a hang. */
const LIMIT_SECONDS = 90;

/**
 * Stills of clips, blurred, grey, or as they are. Whatever cannot be retouched is null: never does a sharp picture take
 * the place of a blurred one.
 */
export async function retouchStills(
  clips: readonly ClipPictures[],
  look: StillLook,
): Promise<readonly ClipPictures[]> {
  if (!look.isBlurred && !look.isGrey) return clips;
  const alike = groupBy(clips, ({ aspect }) => aspect.toFixed(2));
  const made = new Map<ClipPictures, ClipPictures>();
  for (const group of alike.values()) {
    // All of one shape at once, for ffmpeg takes longer to start than to draw; one by one where a picture is damaged.
    const whole = await retouchTogether(group, look);
    for (const clip of group) {
      const own = whole?.get(clip) ?? (await retouchTogether([clip], look))?.get(clip);
      made.set(clip, { ...clip, jpegs: own ?? clip.jpegs.map(() => null) });
    }
  }
  return clips.map((clip) => made.get(clip) ?? { ...clip, jpegs: [] });
}

/** The stills of clips of one shape; null where not every picture came out of it. */
async function retouchTogether(
  clips: readonly ClipPictures[],
  look: StillLook,
): Promise<ReadonlyMap<ClipPictures, ClipPictures['jpegs']> | null> {
  const given = clips.flatMap(({ jpegs }) => jpegs.filter((still) => still !== null));
  const made = given.length === 0 ? [] : await run(given, listFilters(clips[0]?.aspect ?? 1, look));
  if (made.length !== given.length) return null;
  const left = [...made];
  return new Map(
    clips.map((clip) => [clip, clip.jpegs.map((still) => (still === null ? null : (left.shift() ?? null)))]),
  );
}

/** Averages over squares first, so that nothing finer is left to be drawn out. */
function listFilters(aspect: number, { isBlurred, isGrey }: StillLook): string {
  const scaleTo = (side: number, how: string) => {
    const [w, h] = aspect >= 1 ? [side, side / aspect] : [side * aspect, side];
    return `scale=${Math.max(1, Math.round(w))}:${Math.max(1, Math.round(h))}:flags=${how}`;
  };
  return [
    ...(isBlurred ? [scaleTo(BLURRED_SIDE, 'area'), scaleTo(SMOOTH_SIDE, 'bicubic')] : []),
    ...(!isBlurred ? [scaleTo(SHARP_SIDE, 'bicubic')] : []),
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
