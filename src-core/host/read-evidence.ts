import { mkdtemp, rm } from 'node:fs/promises';
import { availableParallelism, tmpdir } from 'node:os';
import path from 'node:path';
import { performance } from 'node:perf_hooks';
import PQueue from 'p-queue';
import type { ClipMovement, MovementOptions } from '../evidence/clip-movement.ts';
import type { EvidenceProblem } from '../evidence/evidence-problem.ts';
import type { AnalysisTask } from './analysis-task.ts';
import { getAnalysisPool } from './evidence-ports.ts';
import type { FirstLook } from './look-at-clip.ts';

/** Everything that one video file shows, whatever lesson it is of. */
export interface FileEvidence {
  readonly file: string;
  /** Null: nothing could be decoded. */
  readonly movement: ClipMovement | null;
  /** Look and cards; null: nothing could be decoded. */
  readonly look: FirstLook | null;
  readonly problems: readonly EvidenceProblem[];
  /** From the first to the last moment of work on this file. */
  readonly milliseconds: number;
  /** Processor time of ffmpeg and of the analysis thread. */
  readonly cpuMilliseconds: number;
}

/** How files of any lesson or none are read. */
export interface FileEvidenceOptions {
  readonly movement: MovementOptions;
  readonly signal: AbortSignal;
  /** Hears the number of files done. */
  readonly onDone: (done: number) => void;
}

/**
 * Watches video files whole, as many at once as there are cores, and tells what each shows, in the order given.
 * Nothing is left on the disk.
 */
export async function readEvidence(
  files: readonly string[],
  { movement, signal, onDone }: FileEvidenceOptions,
): Promise<readonly FileEvidence[]> {
  const cacheFolder = await mkdtemp(path.join(tmpdir(), 'routemark-evidence-'));
  const cores = availableParallelism();
  const atOnce = Math.max(1, Math.min(cores, files.length));
  const queue = new PQueue({ concurrency: atOnce });
  let done = 0;
  try {
    return await queue.addAll(
      files.map((file, at) => async () => {
        const clip = { path: path.resolve(file), contentId: String(at) };
        // A clip alone gets all cores; several share them.
        const order = { cacheFolder, clip, movement, threads: Math.max(1, Math.floor(cores / atOnce)) };
        const evidence = await readOne(file, order, signal);
        done += 1;
        onDone(done);
        return evidence;
      }),
    );
  } finally {
    await rm(cacheFolder, { recursive: true, force: true });
  }
}

interface FileOrder extends Pick<AnalysisTask, 'cacheFolder' | 'clip'> {
  readonly movement: MovementOptions;
  readonly threads: number;
}

async function readOne(file: string, order: FileOrder, signal: AbortSignal): Promise<FileEvidence> {
  const { movement: options, threads, ...task } = order;
  const began = performance.now();
  const pool = getAnalysisPool();
  const watched = await pool.run({ ...task, kind: 'watch', threads }, { signal });
  const looked = await pool.run({ ...task, kind: 'look', searchCards: false }, { signal });
  const moved = await pool.run({ ...task, kind: 'movement', options }, { signal });
  const results = [watched, looked, moved];
  const threadSeconds = results.reduce((sum, result) => sum + (result.ok ? result.threadCpuSeconds : 0), 0);
  const ffmpegSeconds =
    (watched.ok ? watched.value.ffmpegCpuSeconds : 0) + (looked.ok ? looked.value.ffmpegCpuSeconds : 0);
  const failures = results.flatMap((result) => (result.ok ? [] : [result.problem]));
  return {
    file,
    movement: moved.ok ? moved.value : null,
    look: looked.ok ? looked.value : null,
    problems: [...(watched.ok ? watched.value.problems : []), ...failures],
    milliseconds: Math.round(performance.now() - began),
    cpuMilliseconds: Math.round((threadSeconds + ffmpegSeconds) * 1000),
  };
}
