import type { ChildProcess } from 'node:child_process';
import { PassThrough, type Readable } from 'node:stream';
import fluent from 'fluent-ffmpeg';
import type { DecodeProblem } from '../evidence/decode-problem.ts';
import type { Seconds } from '../platform/units.ts';
import { MS_PER_SECOND } from '../platform/units.ts';
import type { Ffmpeg } from './find-ffmpeg.ts';
import { letProcessGiveWay } from './give-way.ts';

/** One run of ffmpeg: files in, filters, one stream of bytes out. */
export interface FfmpegCall {
  readonly inputs: readonly FfmpegInput[];
  /** Filter chains, joined to one graph; its outputs carry the labels that `maps` names. None: no filtering. */
  readonly filters: readonly string[];
  /** What goes into the output, in this order: labels of the graph or streams of an input. Default: `[out]`. */
  readonly maps?: readonly string[];
  /** Options of the output, such as its format. */
  readonly output: readonly string[];
  /** Where the output goes; without it, to {@link FfmpegRun.output}. An absolute path; what stands there is replaced. */
  readonly outputFile?: string;
  readonly limitSeconds: Seconds;
  readonly signal?: AbortSignal;
  /** Nobody waits for it: all else on the machine goes first. */
  readonly isBackground?: boolean;
  /** Hears every line that ffmpeg says, each with its level: `[info]`, `[error]`. */
  onLine(line: string): void;
}

/** A file that ffmpeg reads, or bytes that it is handed, with the options that stand before it. */
export type FfmpegInput = {
  readonly options: readonly string[];
} & (
  | {
      /** Absolute path. */
      readonly path: string;
    }
  /** At most one input of a call. */
  | { readonly stream: Readable }
);

/** Why a run of ffmpeg ended, told once its process is gone. */
export interface FfmpegEnd {
  /**
   * `failed`: ffmpeg gave up on what it was given. `interrupted`: the system or somebody else ended it or kept it from
   * working, which says nothing of the file. `stopped`: we had enough.
   */
  readonly reason: 'done' | 'failed' | 'interrupted' | 'stopped' | 'cancelled' | 'timed-out';
  /** ffmpeg's last complaint without its level and address; empty where it had none. */
  readonly lastError: string;
}

/** A run of ffmpeg under way. */
export interface FfmpegRun {
  /** What ffmpeg writes; ffmpeg waits while nobody reads it. Ends with the run, however that ends. */
  readonly output: Readable;
  /** Settles when the process is gone; never rejects. */
  readonly ended: Promise<FfmpegEnd>;
  /** Ends the run early; repeated calls do nothing. */
  stop(): void;
}

/** How long ffmpeg may take to obey before it is killed. */
const GRACE_MS = 2000;

/** Only files on this machine: a playlist disguised as a clip must not make ffmpeg open addresses. */
const LOCAL_ONLY = ['-protocol_whitelist', 'file,pipe'];

/**
 * What ffmpeg says where not the file is at fault: a signal, which it obeys by closing its output, or the system's own
 * words (strerror) for too little memory, too many open files, a file that is gone or closed to us; or its encoder gives
 * up, which gets pictures of our own size and kind alone (seen once, on a crowded machine, with a sound file).
 */
const FROM_OUTSIDE =
  /received signal \d|Error submitting video frame to the encoder|Cannot allocate memory|Resource temporarily unavailable|Too many open files|(No such file or directory|Permission denied)$/;

/** `-benchmark` makes it say at the end what processor time it took. */
const SPEAK_PLAINLY = ['-hide_banner', '-nostdin', '-nostats', '-benchmark', '-loglevel', 'level+info'];

/**
 * Starts ffmpeg: an argument list without a shell, a time limit, cancellation by signal. It is asked to stop with
 * SIGTERM and killed after {@link GRACE_MS}. This is the only place that knows how processes of ffmpeg are run.
 */
export function runFfmpeg(ffmpeg: Ffmpeg, call: FfmpegCall): FfmpegRun {
  // Closing the stream would make fluent-ffmpeg kill a process that is about to end well.
  const output = new PassThrough({ autoDestroy: false, emitClose: false });
  const command = buildCommand(ffmpeg, call, output);
  let reason: FfmpegEnd['reason'] | null = null;
  let child: ChildProcess | null = null;
  let lastError = '';
  let isInterrupted = false;
  let killTimer: NodeJS.Timeout | undefined;

  let settle: (end: FfmpegEnd) => void = () => {};
  const ended = new Promise<FfmpegEnd>((resolve) => {
    settle = resolve;
  });
  const finish = (own: FfmpegEnd['reason']) => {
    clearTimeout(limitTimer);
    clearTimeout(killTimer);
    call.signal?.removeEventListener('abort', cancel);
    settle({ reason: reason ?? own, lastError });
    output.end();
  };
  const interrupt = (why: FfmpegEnd['reason']) => {
    if (reason !== null) return;
    reason = why;
    killTimer = end(child, () => finish(why));
  };
  const cancel = () => interrupt('cancelled');
  const limitTimer = setTimeout(() => interrupt('timed-out'), call.limitSeconds * MS_PER_SECOND);

  command.on('stderr', (line: string) => {
    lastError = readComplaint(line) ?? lastError;
    isInterrupted ||= FROM_OUTSIDE.test(line);
    call.onLine(line);
  });
  command.on('start', () => {
    child = getProcess(command);
    if (call.isBackground && child?.pid !== undefined) letProcessGiveWay(child.pid);
    child?.once('close', (code, signal) => {
      if (signal !== null) lastError = `ended by ${signal}`;
      if (code === 0) finish('done');
      // Where the file is at fault, ffmpeg says so.
      else finish(isInterrupted || signal !== null || lastError === '' ? 'interrupted' : 'failed');
    });
    if (reason !== null) killTimer = end(child, () => {});
  });
  command.on('error', (error: Error) => {
    if (child?.pid !== undefined) return; // Its process will close, and says more.
    lastError ||= error.message;
    finish('interrupted');
  });
  if (call.signal?.aborted) cancel();
  else {
    call.signal?.addEventListener('abort', cancel);
    command.run();
  }
  return { output, ended, stop: () => interrupt('stopped') };
}

/** The problem of a run that ended for reasons outside its file; null for every other end. Nothing to be remembered. */
export function describeOutsideEnd(end: FfmpegEnd, limitSeconds: Seconds): DecodeProblem | null {
  if (end.reason === 'timed-out') return { code: 'decode-timed-out', limitSeconds };
  if (end.reason === 'cancelled') return { code: 'decode-cancelled' };
  return end.reason === 'interrupted' ? { code: 'decode-interrupted', detail: end.lastError } : null;
}

/**
 * The library asks ffmpeg for its formats and encoders before the first clip of every process and thread, a quarter of a
 * second each time. What an ffmpeg lacks it says itself when it is started.
 */
const NOTHING_TO_ASK = {
  _checkCapabilities: (goOn: (error: null) => void) => goOn(null),
  availableEncoders: (goOn: (error: null, encoders: object) => void) => goOn(null, {}),
};

function buildCommand(ffmpeg: Ffmpeg, call: FfmpegCall, output: PassThrough): fluent.FfmpegCommand {
  const command = Object.assign(fluent({ stdoutLines: 1 }), NOTHING_TO_ASK).setFfmpegPath(ffmpeg.path);
  call.inputs.forEach((input, at) => {
    const global = at === 0 ? SPEAK_PLAINLY : [];
    // Spread on purpose: a lone string would be split at its spaces.
    command
      .input('path' in input ? `file:${input.path}` : input.stream)
      .inputOptions(...[...global, ...LOCAL_ONLY, ...input.options]);
  });
  if (call.filters.length > 0) command.complexFilter([...call.filters]);
  const maps = (call.maps ?? ['[out]']).flatMap((map) => ['-map', map]);
  command
    .output(call.outputFile ?? output)
    .outputOptions(...[...maps, ...ffmpeg.passThrough, ...call.output]);
  return command;
}

/** fluent-ffmpeg keeps its process in a property that its types leave out. */
function getProcess(command: fluent.FfmpegCommand): ChildProcess | null {
  const held: { ffmpegProc?: ChildProcess } = command as object;
  return held.ffmpegProc ?? null;
}

/** Asks a process to end, and kills it when it does not; `onNone` where none has started. */
function end(child: ChildProcess | null, onNone: () => void): NodeJS.Timeout | undefined {
  if (child?.pid === undefined) {
    onNone();
    return undefined;
  }
  // It may be waiting for us to read; a closed pipe lets it go on to the signal.
  child.stdout?.destroy();
  child.kill('SIGTERM');
  return setTimeout(() => child.kill('SIGKILL'), GRACE_MS);
}

/** The text of a line on the levels error and fatal, else null. */
function readComplaint(line: string): string | null {
  return /^(?:\[[^\]]+ @ 0x[0-9a-f]+\] )?\[(?:error|fatal|panic)\] (.*)$/.exec(line)?.[1]?.trim() || null;
}
