import type { Seconds } from '../platform/units.ts';
import type { ClipFacts } from './clip-facts.ts';
import type { FfmpegCall } from './ffmpeg.ts';

/** What a packet of a decoding run is. */
export type PacketKind = 'luma' | 'still' | 'colour' | 'card';

/** What ffmpeg is to be asked, and what comes out of it. */
export interface DecodeOrder {
  readonly call: Pick<FfmpegCall, 'inputs' | 'filters' | 'maps' | 'output'>;
  /** The kind of each stream of the output, in order. */
  readonly kinds: readonly PacketKind[];
}

/**
 * Which pictures of a clip are decoded. `leaned-on`: those that others lean on, as long as they come in even steps.
 * `uneven`: the same, each at its own time. `all`: where too few are left without the rest.
 */
export type PictureChoice = 'leaned-on' | 'uneven' | 'all';

/** How a clip is decoded whole. */
export interface FullOrderOptions {
  readonly facts: ClipFacts;
  /** Whether pictures for the card reader are wanted besides. */
  readonly cards: boolean;
  readonly pictures: PictureChoice;
  /** Cores that ffmpeg may decode on. */
  readonly threads: number;
}

/** Long sides in pixels: motion, the strip's stills, colours of places and pinnies, cards. */
const SIDES = { luma: 80, still: 224, colour: 128, card: 960 } as const;

/** Motion is read from so many pictures a second: four cycles a second keep nearly four pictures each. */
export const MOTION_RATE_HZ = 15;

/** The closest that pictures at their own times may lie: a little less than a step of the motion rate. */
const MOTION_SPACING_SECONDS = 0.95 / MOTION_RATE_HZ;

/** Pictures for the card reader, a second. Spaced a little closer, so that a rate that divides the clip's is met. */
const CARD_RATE_HZ = 5;
const CARD_SPACING_SECONDS = 0.95 / CARD_RATE_HZ;

/** Cards are held up first of all, or shown last. */
const CARD_HEAD_SECONDS = 3.5;
const CARD_TAIL_SECONDS = 1;

/** Stills beyond this are left out evenly: 40 s of 15 a second, about 2 MB a clip. */
export const MOST_STILLS = 600;

/** Colours change slowly: one picture a second. */
const COLOUR_SPACING_SECONDS = 1;

/** A clip of unknown length is taken for this long where stills and colours are spaced; of a longer one some go again. */
const USUAL_SECONDS: Seconds = 60;

/** Colour pictures beyond this are left out evenly; their median does not grow better. */
export const MOST_COLOURS = 64;

/** JPEG quality of stills, 2 (best) to 31: at 7 a still of 224 × 126 takes about 3.5 kB. */
const STILL_QUALITY = '7';

/** Longest that a packet may wait for those of other streams, in microseconds. */
const WAIT_FOR_OTHERS_US = '500000';

/**
 * The stretches that a first look takes: the head, where cards are, and two more; starts as shares of the length. Each
 * has a decoder of its own, whose start costs as much as ten of its key pictures (HEVC, measured 2026-11-28).
 */
const QUICK_LENGTHS_SECONDS = { head: 3.2, further: 1.6 } as const;
const QUICK_FURTHER_SHARES = [0.5, 0.94] as const;

/** A clip shorter than this is covered by one stretch. */
const QUICK_WHOLE_SECONDS: Seconds = 8;

/** Without a pattern type, a photo's name such as IMG_%04d.jpg would stand for a whole series. */
const STILL_FILE = /\.(jpe?g|png|webp|bmp|tiff?)$/i;
const STILL_OPTIONS = ['-f', 'image2', '-pattern_type', 'none'];

/** Deblocking is lost on pictures that shrink to a twentieth. */
const CHEAPLY = ['-skip_loop_filter', 'all'];

/** Pictures of up to so many pixels cost less to decode than to look at, so that none is left out. */
const SMALL_PICTURE = 1280 * 720 - 1;

/** A rate this near to a multiple of the motion rate is one: 29.97 is 30. */
const SAME_RATE = 0.005;

/**
 * Which pictures are decoded at first. Where a clip has a whole number of pictures a step, their own times are even steps
 * anyway, and one whose pictures come unevenly need not be begun anew.
 */
export function choosePictures({ pixels, rateHz }: ClipFacts): PictureChoice {
  if (pixels !== null && pixels <= SMALL_PICTURE) return 'all';
  const times = (rateHz ?? 0) / MOTION_RATE_HZ;
  const isMultiple = Math.round(times) > 0 && Math.abs(times - Math.round(times)) <= SAME_RATE * times;
  return isMultiple ? 'uneven' : 'leaned-on';
}

/** The rate that motion is read at: a clip with fewer pictures would only show some of them twice. */
export function getMotionRate({ rateHz }: ClipFacts): number {
  return rateHz !== null && rateHz >= 1 && rateHz < MOTION_RATE_HZ ? rateHz : MOTION_RATE_HZ;
}

/** One decode of the whole clip: motion luma, stills, colours, and cards at head and tail. */
export function buildFullOrder(path: string, options: FullOrderOptions): DecodeOrder {
  const { facts, pictures, threads: cores } = options;
  const rateHz = getMotionRate(facts);
  const seconds = facts.durationSeconds ?? USUAL_SECONDS;
  const turn = getTurn(facts);
  const cards = options.cards
    ? [`[big]select='${selectCards(facts.durationSeconds)}',${scaleTo(SIDES.card)}${turn},format=gray[card]`]
    : [];
  const source = `[0:v:0]showinfo=checksum=0`;
  const pace = pictures === 'uneven' ? `select='${selectSpaced(MOTION_SPACING_SECONDS)}'` : `fps=${rateHz}`;
  const small = `${pace},${scaleTo(SIDES.still)}${turn},format=yuv420p,split=3[a][b][c]`;
  const everyStill = Math.max(1, Math.ceil((seconds * rateHz) / MOST_STILLS));
  const everyColour = Math.max(1, Math.round(rateHz * getColourSpacing(seconds)));
  return {
    call: {
      inputs: [
        {
          path,
          options: STILL_FILE.test(path)
            ? STILL_OPTIONS
            : [
                ...['-threads', String(countThreads(cores)), '-noautorotate', ...CHEAPLY],
                ...(pictures === 'all' ? [] : ['-skip_frame', 'noref']),
              ],
        },
      ],
      filters: [
        ...(options.cards ? [`${source},split=2[all][big]`, `[all]${small}`] : [`${source},${small}`]),
        `[a]${scaleExactly(SIDES.luma)},format=gray[luma]`,
        `[b]select='not(mod(n,${everyStill}))',format=yuvj420p[still]`,
        `[c]select='not(mod(n,${everyColour}))',${scaleTo(SIDES.colour)},format=yuv420p[colour]`,
        ...cards,
      ],
      maps: ['[luma]', '[still]', '[colour]', ...(options.cards ? ['[card]'] : [])],
      output: listOutput(['luma', 'still', 'colour', ...(options.cards ? (['card'] as const) : [])]),
    },
    kinds: ['luma', 'still', 'colour', ...(options.cards ? (['card'] as const) : [])],
  };
}

/** Decoding threads wait for each other's pictures and for the filters; so many more keep several cores at work. */
const THREADS_THAT_WAIT = 2;

function countThreads(cores: number): number {
  return cores > 1 ? cores + THREADS_THAT_WAIT : 1;
}

/** Key pictures of a few stretches: what a first look at a whole class needs. */
export function buildQuickOrder(path: string, durationSeconds: Seconds | null): DecodeOrder {
  const kinds = ['still', 'colour', 'card'] as const;
  const inputs = STILL_FILE.test(path)
    ? [{ path, options: STILL_OPTIONS }]
    : listQuickStretches(durationSeconds).map(({ from, length }) => ({
        path,
        options: [
          ...['-threads', '1', '-copyts', '-start_at_zero', ...CHEAPLY, '-skip_frame', 'nokey'],
          ...(from > 0 ? ['-noaccurate_seek', '-ss', String(from)] : []),
          ...['-t', String(length)],
        ],
      }));
  const names = inputs.map((_, at) => `[${at}:v:0]`).join('');
  const together = inputs.length > 1 ? `${names}interleave=n=${inputs.length},` : names;
  return {
    call: {
      inputs,
      filters: [
        `${together}${scaleTo(SIDES.card)},format=yuv420p,split=2[a][b]`,
        `[a]format=gray[card]`,
        `[b]${scaleTo(SIDES.still)},split=2[c][d]`,
        `[c]format=yuvj420p[still]`,
        `[d]${scaleTo(SIDES.colour)},format=yuv420p[colour]`,
      ],
      maps: kinds.map((kind) => `[${kind}]`),
      output: listOutput(kinds),
    },
    kinds,
  };
}

interface Stretch {
  readonly from: Seconds;
  readonly length: Seconds;
}

function listQuickStretches(durationSeconds: Seconds | null): readonly Stretch[] {
  const { head, further } = QUICK_LENGTHS_SECONDS;
  if (durationSeconds === null || durationSeconds < QUICK_WHOLE_SECONDS) {
    return [{ from: 0, length: QUICK_WHOLE_SECONDS }];
  }
  return [
    { from: 0, length: head },
    ...QUICK_FURTHER_SHARES.map((share) => ({ from: share * durationSeconds, length: further })),
  ];
}

function getColourSpacing(seconds: Seconds): Seconds {
  return Math.max(COLOUR_SPACING_SECONDS, seconds / MOST_COLOURS);
}

/** Small pictures are cheaper to turn than large ones, so turning comes after scaling. */
function getTurn({ turnDegrees }: ClipFacts): string {
  return { 0: '', 90: ',transpose=clock', 180: ',hflip,vflip', 270: ',transpose=cclock' }[turnDegrees];
}

/** Shrinks so that the longer side has so many pixels; smaller pictures stay. Sizes are even. */
function scaleTo(side: number): string {
  const w = `'if(gte(iw,ih),max(2,2*trunc(min(${side},iw)/2)),-2)'`;
  const h = `'if(gte(iw,ih),-2,max(2,2*trunc(min(${side},ih)/2)))'`;
  return `scale=w=${w}:h=${h}:flags=area`;
}

/** The longer side gets exactly so many pixels. */
function scaleExactly(side: number): string {
  return `scale=w='if(gte(iw,ih),${side},-1)':h='if(gte(iw,ih),-1,${side})':flags=area`;
}

/** An expression that takes pictures of head and tail; the very first one always, so that the stream begins at once. */
function selectCards(durationSeconds: Seconds | null): string {
  const head = `lt(t,${CARD_HEAD_SECONDS})`;
  const tail = durationSeconds === null ? '0' : `gte(t,${durationSeconds - CARD_TAIL_SECONDS})`;
  return `isnan(prev_selected_t)+(${head}+${tail})*(${selectSpaced(CARD_SPACING_SECONDS)})`;
}

function selectSpaced(spacingSeconds: Seconds): string {
  return `isnan(prev_selected_t)+gte(t-prev_selected_t,${spacingSeconds})`;
}

function listOutput(kinds: readonly PacketKind[]): string[] {
  const codecs = kinds.flatMap((kind, at) =>
    kind === 'still' ? [`-c:v:${at}`, 'mjpeg', `-q:v:${at}`, STILL_QUALITY] : [`-c:v:${at}`, 'rawvideo'],
  );
  const container = ['-f', 'matroska', '-live', '1', '-write_crc32', '0'];
  return [...codecs, '-max_interleave_delta', WAIT_FOR_OTHERS_US, '-flush_packets', '1', ...container];
}
