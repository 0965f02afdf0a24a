import { setTimeout as sleep } from 'node:timers/promises';
import type { EvidenceProblem } from '../../evidence/evidence-problem.ts';
import type { AnalysisQueue, TaskOptions, TaskOutcome } from '../analysis-queue.ts';
import type { AnalysisTask } from '../analysis-task.ts';
import { openEvidenceCache } from '../evidence-cache.ts';
import { recallLook } from '../look-at-clip.ts';
import { recallWatch } from '../watch-clip.ts';
import { type ClipJob, findClipJob } from './clip-job.ts';
import type { JobStore } from './job-store.ts';

/** How often the store is asked how a job stands. */
const ASK_MS = 200;

/** A job that the store lost, or that left no evidence, is put there anew; not forever. */
const MOST_ROUNDS = 5;

/**
 * A queue served by workers of other processes. Only jobs go over it: what workers find stands in the lesson's evidence,
 * which is the one truth of what is done, so that a store that forgets, a second process that asks for the same and a
 * run after a run that was killed all come to the same end.
 *
 * @param local does what needs no decoding
 */
export function handOut(store: JobStore, local: AnalysisQueue): AnalysisQueue {
  const run = async (task: AnalysisTask, options: TaskOptions = {}) => {
    const job = findClipJob(task);
    return job ? handOutJob(store, job, options.signal) : local.run(task, options);
  };
  return {
    run: run as AnalysisQueue['run'],
    close: async () => {
      await store.close();
      await local.close();
    },
  };
}

async function handOutJob(
  store: JobStore,
  job: ClipJob,
  signal: AbortSignal | undefined,
): Promise<TaskOutcome<ClipJob['kind']>> {
  // An end that was never fetched is of another run: the machine may be in better order by now.
  if ((await store.find(job)) !== 'open') await store.remove(job);
  for (let round = 1; round <= MOST_ROUNDS; round++) {
    await store.put(job);
    const problem = await waitForEnd(store, job, signal);
    const value = await recall(job);
    if (value) return { ok: true, value, threadCpuSeconds: 0 };
    if (problem) return { ok: false, problem };
  }
  return { ok: false, problem: { code: 'analysis-failed', detail: 'the queue lost it again and again' } };
}

/** Null: it ended well, or is gone. */
async function waitForEnd(
  store: JobStore,
  job: ClipJob,
  signal: AbortSignal | undefined,
): Promise<EvidenceProblem | null> {
  for (;;) {
    const state = await store.find(job);
    if (state === 'gone') return null;
    if (state !== 'open' || signal?.aborted) await store.remove(job);
    if (state !== 'open') return state.problems[0] ?? null;
    if (signal?.aborted) return { code: 'decode-cancelled' };
    await sleep(ASK_MS);
  }
}

function recall({ kind, cacheFolder, contentId }: ClipJob) {
  const cache = openEvidenceCache(cacheFolder);
  return kind === 'look' ? recallLook(cache, contentId, true) : recallWatch(cache, contentId);
}
