import { performance } from 'node:perf_hooks';
import { parentPort, workerData } from 'node:worker_threads';
import type { Seconds } from '../platform/units.ts';
import { MS_PER_SECOND } from '../platform/units.ts';
import { type AnalysisTask, runAnalysisTask } from './analysis-task.ts';
import { letThreadGiveWay } from './give-way.ts';

// The program of one analysis thread: one task at a time, so that its processor time is that task's.

/** What the pool sends to one of its threads. */
export type WorkerOrder =
  | { readonly order: 'run'; readonly task: AnalysisTask }
  /** Stops the task under way; it still answers. */
  | { readonly order: 'stop' };

/** What a thread is started with. */
export interface WorkerStart {
  /** Nobody waits for what it does. */
  readonly isBackground: boolean;
}

/** What goes back for each task: its value, or what a bug said. */
export type WorkerReply =
  | { readonly ok: true; readonly value: unknown; readonly threadCpuSeconds: Seconds }
  | { readonly ok: false; readonly detail: string };

if ((workerData as WorkerStart).isBackground) letThreadGiveWay();

let stop = new AbortController();

parentPort?.on('message', async (message: WorkerOrder) => {
  if (message.order === 'stop') {
    stop.abort();
    return;
  }
  stop = new AbortController();
  parentPort?.postMessage(await answer(message.task));
});

async function answer(task: AnalysisTask): Promise<WorkerReply> {
  const before = performance.eventLoopUtilization();
  try {
    const value = await runAnalysisTask(task, stop.signal);
    // Time in which this thread was not waiting; Node 20 has no processor time of one thread.
    const { active } = performance.eventLoopUtilization(before);
    return { ok: true, value, threadCpuSeconds: active / MS_PER_SECOND };
  } catch (error) {
    return { ok: false, detail: error instanceof Error ? (error.stack ?? error.message) : String(error) };
  }
}
