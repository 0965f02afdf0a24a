import { resolve } from 'node:path';
import type { DecodeProblem } from '../evidence/decode-problem.ts';
import type { Seconds } from '../platform/units.ts';
import { type ClipFacts, createRunListener, type RunListener } from './clip-facts.ts';
import {
  buildFullOrder,
  buildQuickOrder,
  type DecodeOrder,
  getMotionRate,
  MOTION_RATE_HZ,
  type PacketKind,
  type PictureChoice,
} from './decode-orders.ts';
import { describeOutsideEnd, type FfmpegEnd, runFfmpeg } from './ffmpeg.ts';
import { type Ffmpeg, findFfmpeg } from './find-ffmpeg.ts';
import { createPacketReader, type StreamPacket } from './packet-stream.ts';

/** One picture of a clip, as one of the analysers wants it. */
export interface DecodedPacket extends Omit<StreamPacket, 'stream'> {
  /** `luma` and `card`: brightness. `colour`: planar YUV 4:2:0. `still`: a JPEG file. */
  readonly kind: PacketKind;
}

/** How a decoding run is limited. */
export interface DecodeLimits {
  readonly limitSeconds?: Seconds;
  readonly signal?: AbortSignal;
  /** Nobody waits for it: all else on the machine goes first. */
  readonly isBackground?: boolean;
}

/** What is asked of one decoding run. */
export type DecodeRequest = DecodeLimits &
  (
    | { readonly pass: 'quick'; readonly durationSeconds: Seconds | null }
    | {
        readonly pass: 'full';
        readonly facts: ClipFacts;
        readonly cards: boolean;
        readonly pictures: PictureChoice;
        readonly threads: number;
      }
  );

/** How a decoding run ended. */
export interface DecodeEnd {
  /** `too-sparse`: with this choice of pictures, motion cannot be read as asked; ask for `better`. */
  readonly reason: FfmpegEnd['reason'] | 'missing' | 'too-sparse';
  /** Null unless the choice is too sparse. */
  readonly better: PictureChoice | null;
  readonly problem: DecodeProblem | null;
  readonly facts: ClipFacts;
  readonly cpuSeconds: Seconds;
}

/** A decoding run under way. ffmpeg waits while nobody reads, so memory stays flat whatever the clip's length. */
export interface DecodeRun {
  /** To be read once; leaving the loop early ends ffmpeg. Packets of one kind come in order of time. */
  readonly packets: AsyncIterable<DecodedPacket>;
  /** Settles when the reading is over and ffmpeg is gone; never rejects. */
  readonly ended: Promise<DecodeEnd>;
}

const UNKNOWN: ClipFacts = { durationSeconds: null, rateHz: null, pixels: null, turnDegrees: 0 };

/** A first look takes about half a second; a hundred times that is a hang. */
const QUICK_LIMIT_SECONDS = 60;

/** Twenty times the clip's own length, five minutes at least: far beyond the slowest machine that plays it. */
const FULL_LIMIT = { times: 20, leastSeconds: 300 } as const;

/** A clip whose pictures end this much before what the file promises was cut. */
const CUT_SHORT_SECONDS = 0.75;

/** A tenth for rounding in the file's times. */
const STEP_SLACK = 1.1;

/**
 * Steps between pictures: up to the first, motion is read in even
 * steps; up to the second, from each picture's own time. Four cycles a second still keep more than two pictures each.
 */
const WIDEST_STEPS_SECONDS = [STEP_SLACK / MOTION_RATE_HZ, STEP_SLACK / 10] as const;

/** Gaps wider than the motion rate allows: a few, and a few in a hundred, are dropped pictures and no pattern. */
const MOST_GAPS = { count: 3, share: 0.05 } as const;

/** Starts one ffmpeg for one clip and hands out what its several outputs give, as it comes. */
export function decodeClip(path: string, request: DecodeRequest): DecodeRun {
  let settle: (end: DecodeEnd) => void = () => {};
  const ended = new Promise<DecodeEnd>((done) => {
    settle = done;
  });
  return { packets: decode(resolve(path), request, settle), ended };
}

/** What ffmpeg says of a clip before it decodes it. */
export interface ProbedClip {
  /** All unknown where the file is nothing that ffmpeg reads. */
  readonly facts: ClipFacts;
  /** Why ffmpeg could not be asked; null where it answered, and be it that it cannot read the file. */
  readonly problem: DecodeProblem | null;
}

/** Asks ffmpeg about a clip; costs a start of ffmpeg and no decoding. */
export async function probeClip(path: string, limits: DecodeLimits = {}): Promise<ProbedClip> {
  const ffmpeg = await findFfmpeg();
  if (!ffmpeg.ok) return { facts: UNKNOWN, problem: ffmpeg.problems[0] ?? null };
  const limitSeconds = limits.limitSeconds ?? QUICK_LIMIT_SECONDS;
  const listener = createRunListener();
  const run = runFfmpeg(ffmpeg.value, {
    inputs: [{ path: resolve(path), options: [] }],
    filters: [],
    maps: ['0:v:0'],
    output: ['-c', 'copy', '-t', '0', '-f', 'null'],
    limitSeconds,
    isBackground: limits.isBackground ?? false,
    ...(limits.signal && { signal: limits.signal }),
    onLine: listener.hear,
  });
  run.output.resume();
  const end = await run.ended;
  return { facts: listener.tell().facts, problem: describeOutsideEnd(end, limitSeconds) };
}

async function* decode(
  path: string,
  request: DecodeRequest,
  settle: (end: DecodeEnd) => void,
): AsyncGenerator<DecodedPacket> {
  const ffmpeg = await findFfmpeg();
  if (!ffmpeg.ok) {
    const [problem = null] = ffmpeg.problems;
    settle({ reason: 'missing', problem, facts: UNKNOWN, cpuSeconds: 0, better: null });
    return;
  }
  const listener = createRunListener(listWidestSteps(request));
  const order = buildOrder(path, request);
  const run = start(ffmpeg.value, order, { request, listener });
  const reader = createPacketReader();
  const given = { count: 0, lastSeconds: 0 };
  let better: PictureChoice | null = null;
  let isLeftEarly = true;
  try {
    for await (const chunk of run.output) {
      better = findBetterChoice(request, listener);
      if (better) break;
      for (const { stream, ...packet } of reader.push(chunk)) {
        given.count += 1;
        given.lastSeconds = Math.max(given.lastSeconds, packet.atSeconds);
        yield { kind: order.kinds[stream] ?? 'card', ...packet };
      }
    }
    isLeftEarly = better !== null;
  } finally {
    if (isLeftEarly) run.stop();
    const end = await run.ended;
    const { facts, cpuSeconds } = listener.tell();
    // The last pictures may have been told of after the last packet came.
    if (end.reason === 'done') better ??= findBetterChoice(request, listener);
    if (better) settle({ reason: 'too-sparse', problem: null, facts, cpuSeconds, better });
    else {
      const problem = judge(end, request, { ...given, facts });
      settle({ reason: end.reason, problem, facts, cpuSeconds, better });
    }
  }
}

function buildOrder(path: string, request: DecodeRequest): DecodeOrder {
  return request.pass === 'quick'
    ? buildQuickOrder(path, request.durationSeconds)
    : buildFullOrder(path, request);
}

function start(
  ffmpeg: Ffmpeg,
  { call }: DecodeOrder,
  { request, listener }: { readonly request: DecodeRequest; readonly listener: RunListener },
) {
  return runFfmpeg(ffmpeg, {
    ...call,
    limitSeconds: getLimit(request),
    isBackground: request.isBackground ?? false,
    ...(request.signal && { signal: request.signal }),
    onLine: listener.hear,
  });
}

function getLimit(request: DecodeRequest): Seconds {
  if (request.limitSeconds !== undefined) return request.limitSeconds;
  if (request.pass === 'quick') return QUICK_LIMIT_SECONDS;
  const { times, leastSeconds } = FULL_LIMIT;
  return Math.max(leastSeconds, times * (request.facts.durationSeconds ?? 0));
}

/** A clip of few pictures a second cannot have narrower steps than its own. */
function listWidestSteps(request: DecodeRequest): readonly Seconds[] {
  const ownSeconds = request.pass === 'full' ? 1 / getMotionRate(request.facts) : 0;
  return WIDEST_STEPS_SECONDS.map((seconds) => Math.max(seconds, STEP_SLACK * ownSeconds));
}

/** A choice under which motion can be read, where the present one leaves steps that are too wide; else null. */
function findBetterChoice(request: DecodeRequest, listener: RunListener): PictureChoice | null {
  if (request.pass === 'quick' || request.pictures === 'all') return null;
  const { shown, gaps } = listener.tell();
  const [uneven, sparse] = gaps.map((count) => count > MOST_GAPS.count && count > MOST_GAPS.share * shown);
  if (sparse) return 'all';
  return uneven && request.pictures === 'leaned-on' ? 'uneven' : null;
}

interface Given {
  readonly count: number;
  readonly lastSeconds: Seconds;
  readonly facts: ClipFacts;
}

function judge(end: FfmpegEnd, request: DecodeRequest, given: Given): DecodeProblem | null {
  const outside = describeOutsideEnd(end, getLimit(request));
  if (outside || end.reason === 'stopped') return outside;
  if (given.count === 0) return { code: 'decode-failed', detail: end.lastError };
  const promised = request.pass === 'full' ? (given.facts.durationSeconds ?? 0) : 0;
  const isCutShort = given.lastSeconds < promised - CUT_SHORT_SECONDS;
  if (end.reason === 'done' && !isCutShort) return null;
  return { code: 'decode-cut-short', lastSeconds: given.lastSeconds, detail: end.lastError };
}
