import type { ClipMovement, MovementOptions } from '../evidence/clip-movement.ts';
import type { Seconds } from '../platform/units.ts';
import { openEvidenceCache } from './evidence-cache.ts';
import { type ClipPlace, type FirstLook, lookAtClip } from './look-at-clip.ts';
import { readClipMovement } from './read-clip-movement.ts';
import { type WatchedClip, type WatchOptions, watchClip } from './watch-clip.ts';

/** A piece of analysis that may run in another thread: plain data. */
export type AnalysisTask = { readonly cacheFolder: string; readonly clip: ClipPlace } & (
  | { readonly kind: 'look'; readonly searchCards: boolean }
  | { readonly kind: 'watch'; readonly threads: number; readonly isBackground?: boolean }
  | { readonly kind: 'movement'; readonly options: MovementOptions }
);

/** What each kind of task gives; null for movement where the clip was never watched whole. */
export interface AnalysisResults {
  readonly look: FirstLook;
  readonly watch: WatchedClip;
  readonly movement: ClipMovement | null;
}

/** A finished task with what it gave and cost. */
export interface AnalysisResult<Kind extends AnalysisTask['kind']> {
  readonly value: AnalysisResults[Kind];
  /** Processor time of the thread that did it, ffmpeg's not counted. */
  readonly threadCpuSeconds: Seconds;
}

/** Does one task, in whatever thread it is called. Rejects on bugs alone. */
export async function runAnalysisTask(
  task: AnalysisTask,
  signal: AbortSignal,
): Promise<AnalysisResults[AnalysisTask['kind']]> {
  const cache = openEvidenceCache(task.cacheFolder);
  if (task.kind === 'look') {
    return lookAtClip(cache, task.clip, { signal, searchCards: task.searchCards });
  }
  if (task.kind === 'movement') return readClipMovement(cache, task.clip.contentId, task.options);
  const { threads, isBackground = false } = task;
  const options: WatchOptions = { signal, threads, isBackground };
  return watchClip(cache, task.clip, options);
}
