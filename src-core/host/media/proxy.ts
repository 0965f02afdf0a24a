import { mkdir, rename, rm, stat } from 'node:fs/promises';
import path from 'node:path';
import type { Problem } from '../../contract/problem.ts';
import type { Progress } from '../../contract/progress.ts';
import { fail, type Outcome, succeed } from '../../platform/outcome.ts';
import type { Seconds } from '../../platform/units.ts';
import { describeOutsideEnd, runFfmpeg } from '../ffmpeg.ts';
import { findFfmpeg } from '../find-ffmpeg.ts';
import { describeWriteError } from '../write-error.ts';

/** Raised when proxies are made otherwise, so that old ones are made anew. */
const PROXY_VERSION = 1;

/** Lines of a proxy's picture at most: enough to judge an exercise, quick to make. */
const PROXY_LINES = 720;

/** Pictures between two that can be jumped to: half a second, so that stepping back is quick. */
const KEY_PICTURES = 15;

/** A clip that a window cannot decode. */
export interface ProxyOrder {
  /** The lesson folder. */
  readonly folder: string;
  readonly clip: string;
  readonly file: string;
  /** Null where the file does not say; then progress is not told. */
  readonly durationSeconds: Seconds | null;
}

/** Where a clip's proxy is kept: in the evidence cache, which may be deleted at any time. */
export function getProxyFile(folder: string, clip: string): string {
  return path.join(folder, 'evidence', 'proxies', `${clip}.v${PROXY_VERSION}.mp4`);
}

/**
 * Makes an H.264 film of a clip for windows that cannot decode it, unless there is one. It has the clip's own time,
 * and its sound where there is one. Fails where the clip cannot be decoded; rejects when stopped.
 */
export async function writeProxy(
  order: ProxyOrder,
  job: { readonly signal: AbortSignal; readonly onProgress: (progress: Progress) => void },
): Promise<Outcome<string, Problem>> {
  const target = getProxyFile(order.folder, order.clip);
  if (await isThere(target)) return succeed(target);
  const ffmpeg = await findFfmpeg();
  if (!ffmpeg.ok) return ffmpeg;
  const limitSeconds = 60 + 20 * (order.durationSeconds ?? 60);
  const draft = `${target}.${process.pid}.part`;
  try {
    await mkdir(path.dirname(target), { recursive: true });
    const run = runFfmpeg(ffmpeg.value, {
      inputs: [{ path: order.file, options: ['-progress', 'pipe:2'] }],
      filters: [`[0:v:0]scale=-2:'2*trunc(min(${PROXY_LINES},ih)/2)',format=yuv420p[out]`],
      output: [
        ...[
          '-map',
          '0:a:0?',
          '-c:v',
          'libx264',
          '-preset',
          'veryfast',
          '-crf',
          '23',
          '-g',
          String(KEY_PICTURES),
        ],
        ...['-c:a', 'aac', '-b:a', '96k', '-movflags', '+faststart', '-map_metadata', '-1', '-f', 'mp4'],
      ],
      outputFile: draft,
      limitSeconds,
      signal: job.signal,
      onLine: (line) => tellProgress(line, order.durationSeconds, job.onProgress),
    });
    run.output.resume();
    const end = await run.ended;
    job.signal.throwIfAborted();
    const outside = describeOutsideEnd(end, limitSeconds);
    if (outside) return fail(outside);
    if (end.reason !== 'done') return fail({ code: 'decode-failed', detail: end.lastError });
    await rename(draft, target);
    return succeed(target);
  } catch (error) {
    job.signal.throwIfAborted();
    return fail(describeWriteError(error, target));
  } finally {
    await rm(draft, { force: true }).catch(() => {});
  }
}

function tellProgress(
  line: string,
  durationSeconds: Seconds | null,
  tell: (progress: Progress) => void,
): void {
  const [, micros] = /^out_time_(?:us|ms)=(\d+)$/.exec(line) ?? [];
  if (micros === undefined || durationSeconds === null) return;
  const total = Math.max(1, Math.round(durationSeconds));
  tell({ step: 'proxy', done: Math.min(total, Math.round(Number(micros) / 1e6)), total });
}

function isThere(file: string): Promise<boolean> {
  return stat(file).then(
    (found) => found.size > 0,
    () => false,
  );
}
