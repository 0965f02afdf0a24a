import { resolve } from 'node:path';
import type { DecodeProblem } from '../evidence/decode-problem.ts';
import type { LumaFrame } from '../evidence/luma-frame.ts';
import type { Seconds } from '../platform/units.ts';
import { describeOutsideEnd, type FfmpegEnd, type FfmpegInput, type FfmpegRun, runFfmpeg } from './ffmpeg.ts';
import { findFfmpeg } from './find-ffmpeg.ts';
import { FrameLog } from './frame-log.ts';

/** A stretch of a clip to look at. */
export interface FrameWindow {
  /** Start of the stretch, from the start of the clip. */
  readonly fromSeconds: Seconds;
  readonly lengthSeconds: Seconds;
  /**
   * At most so many pictures a second, each with its own exact time; or the one key picture at or before the
   * start of the stretch, which costs next to nothing.
   */
  readonly take: { readonly perSecond: number } | 'key-picture';
}

/** What to decode of a clip, and within which limits. */
export interface FrameRequest {
  /** In order of time; overlapping ones may give a picture twice. One decoder runs for each. */
  readonly windows: readonly FrameWindow[];
  /** Larger pictures are scaled so that their longer side has this many pixels. */
  readonly longSide?: number;
  readonly limitSeconds?: Seconds;
  readonly signal?: AbortSignal;
}

/** How a decoding run ended. */
export interface FrameRunEnd {
  readonly reason: FfmpegEnd['reason'] | 'missing';
  readonly problem: DecodeProblem | null;
  /** Length of the clip as ffmpeg understands it; null where it does not say, as for stills. */
  readonly durationSeconds: Seconds | null;
  readonly frameCount: number;
}

/** A decoding run under way. Pictures are decoded as they are asked for, so memory stays bounded. */
export interface FrameRun {
  /** To be read once; leaving the loop early ends ffmpeg. */
  readonly frames: AsyncIterable<LumaFrame>;
  /** Settles when the reading is over and ffmpeg is gone; never rejects. */
  readonly ended: Promise<FrameRunEnd>;
}

/** Enough for a card of 25 modules that takes up a twelfth of the picture's width. */
const LONG_SIDE = 960;

/** A head of 4 s of 2160p HEVC takes about 6 s on one old core; ten times that is a hang. */
const LIMIT_SECONDS = 60;

/** Pictures may lie a little closer than asked, so that a rate that divides the clip's own is met exactly. */
const SPACING_SLACK = 0.05;

/** A window that stops this much short of what the file promises was cut. */
const CUT_SHORT_SECONDS = 0.75;

const STILL = /\.(jpe?g|png|webp|bmp|tiff?)$/i;

/** Decodes stretches of a clip, or a still, to brightness pictures: one ffmpeg process. */
export function sampleFrames(path: string, request: FrameRequest): FrameRun {
  let settle: (end: FrameRunEnd) => void = () => {};
  const ended = new Promise<FrameRunEnd>((done) => {
    settle = done;
  });
  return { frames: decode(resolve(path), request, settle), ended };
}

async function* decode(
  path: string,
  request: FrameRequest,
  settle: (end: FrameRunEnd) => void,
): AsyncGenerator<LumaFrame> {
  const ffmpeg = await findFfmpeg();
  if (!ffmpeg.ok) {
    const [problem = null] = ffmpeg.problems;
    settle({ reason: 'missing', problem, durationSeconds: null, frameCount: 0 });
    return;
  }
  const log = new FrameLog();
  const run = runFfmpeg(ffmpeg.value, {
    inputs: buildInputs(path, request.windows),
    filters: buildFilters(request),
    output: ['-f', 'rawvideo'],
    limitSeconds: request.limitSeconds ?? LIMIT_SECONDS,
    ...(request.signal && { signal: request.signal }),
    onLine: (line) => log.hear(line),
  });
  run.ended.then(() => log.close());
  const given = { count: 0, lastSeconds: 0 };
  let isLeftEarly = true;
  try {
    for await (const frame of assemble(run, log)) {
      given.count += 1;
      given.lastSeconds = frame.atSeconds;
      yield frame;
    }
    isLeftEarly = false;
  } finally {
    if (isLeftEarly) run.stop();
    const end = await run.ended;
    const problem = judge(end, request, { ...given, durationSeconds: log.durationSeconds });
    settle({ reason: end.reason, problem, durationSeconds: log.durationSeconds, frameCount: given.count });
  }
}

function buildInputs(path: string, windows: readonly FrameWindow[]): FfmpegInput[] {
  // Without a pattern type, a photo's name such as IMG_%04d.jpg would stand for a whole series.
  if (STILL.test(path)) return [{ path, options: ['-f', 'image2', '-pattern_type', 'none'] }];
  return windows.map((window) => {
    const seek = window.fromSeconds > 0 ? ['-ss', String(window.fromSeconds)] : [];
    // Pictures that no other one leans on are left out of decoding where pictures to spare remain.
    const skip =
      window.take === 'key-picture' ? ['-skip_frame', 'nokey', '-noaccurate_seek'] : ['-skip_frame', 'noref'];
    const keepTimes = ['-copyts', '-start_at_zero'];
    // One thread a clip: several clips are decoded at once, and threads of one clip wait for each other.
    return {
      path,
      options: ['-threads', '1', ...keepTimes, ...skip, ...seek, '-t', String(window.lengthSeconds)],
    };
  });
}

function buildFilters(request: FrameRequest): string[] {
  const side = request.longSide ?? LONG_SIDE;
  const scale = `scale=w='if(gte(iw,ih),min(${side},iw),-2)':h='if(gte(iw,ih),-2,min(${side},ih))':flags=area`;
  const chains = request.windows.map((window, at) => {
    const pick =
      window.take === 'key-picture'
        ? 'trim=end_frame=1'
        : `select='isnan(prev_selected_t)+gte(t-prev_selected_t,${(1 - SPACING_SLACK) / window.take.perSecond})'`;
    return `[${at}:v:0]${pick},${scale},setsar=1,format=gray`;
  });
  const [only = ''] = chains;
  if (chains.length === 1) return [`${only},showinfo[out]`];
  // Interleaving keeps each picture's own time, which joining end to end would not.
  const names = chains.map((_, at) => `[w${at}]`);
  return [
    ...chains.map((chain, at) => `${chain}[w${at}]`),
    `${names.join('')}interleave=n=${chains.length},showinfo[out]`,
  ];
}

/** Cuts the raw stream into pictures by the sizes that ffmpeg logs for them, in the same order. */
async function* assemble(run: FfmpegRun, log: FrameLog): AsyncGenerator<LumaFrame> {
  let frame: LumaFrame | null = null;
  let filled = 0;
  for await (const chunk of run.output) {
    let rest: Uint8Array = chunk;
    while (rest.length > 0) {
      frame ??= await log.next();
      if (!frame) return;
      const part = rest.subarray(0, frame.luma.length - filled);
      frame.luma.set(part, filled);
      filled += part.length;
      rest = rest.subarray(part.length);
      if (filled < frame.luma.length) break;
      yield frame;
      frame = null;
      filled = 0;
    }
  }
}

interface Given {
  readonly count: number;
  readonly lastSeconds: Seconds;
  readonly durationSeconds: Seconds | null;
}

function judge(end: FfmpegEnd, request: FrameRequest, given: Given): DecodeProblem | null {
  const limitSeconds = request.limitSeconds ?? LIMIT_SECONDS;
  const outside = describeOutsideEnd(end, limitSeconds);
  if (outside || end.reason === 'stopped') return outside;
  if (given.count === 0) return { code: 'decode-failed', detail: end.lastError };
  if (end.reason === 'done' && !isCutShort(request.windows, given)) return null;
  return { code: 'decode-cut-short', lastSeconds: given.lastSeconds, detail: end.lastError };
}

/** Whether the last window that should have shown something lacks pictures at its end. ffmpeg itself says "done". */
function isCutShort(windows: readonly FrameWindow[], given: Given): boolean {
  const duration = given.durationSeconds ?? 0;
  return windows.some((window) => {
    if (window.take === 'key-picture') return false;
    const promised = Math.min(window.fromSeconds + window.lengthSeconds, duration);
    return given.lastSeconds < promised - 1 / window.take.perSecond - CUT_SHORT_SECONDS;
  });
}
