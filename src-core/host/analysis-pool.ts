import { createRequire } from 'node:module';
import { availableParallelism } from 'node:os';
import { pathToFileURL } from 'node:url';
import { Worker } from 'node:worker_threads';
import PQueue from 'p-queue';
import type { AnalysisQueue, TaskOptions } from './analysis-queue.ts';
import type { AnalysisTask } from './analysis-task.ts';
import type { WorkerOrder, WorkerReply, WorkerStart } from './analysis-worker.ts';

/** The priority of the clip on the teacher's screen; the others have 0. */
export const OPENED_FIRST = 10;

/**
 * A queue served by threads of this process, as many clips at once as there are cores. Threads start with the first
 * tasks and keep no process alive while idle.
 *
 * @param isBackground nobody waits for its tasks: all else on the machine goes first
 */
export function createAnalysisPool(
  most: number = availableParallelism(),
  isBackground = false,
): AnalysisQueue {
  const queue = new PQueue({ concurrency: most });
  const idle: Worker[] = [];
  const all = new Set<Worker>();
  const start = (): Worker => {
    const worker = startWorker({ isBackground });
    all.add(worker);
    // Idle or not: a thread that is gone would never answer.
    worker.once('exit', () => {
      all.delete(worker);
      const at = idle.indexOf(worker);
      if (at >= 0) idle.splice(at, 1);
    });
    return worker;
  };
  const run = async (task: AnalysisTask, signal: AbortSignal | undefined) => {
    if (signal?.aborted) return { ok: false, problem: { code: 'decode-cancelled' } } as const;
    const worker = idle.pop() ?? start();
    const reply = await ask(worker, task, signal);
    if (reply !== null) idle.push(worker);
    if (reply?.ok) return reply;
    const detail = reply?.detail ?? lastWords.get(worker) ?? 'the analysis thread ended';
    return { ok: false, problem: { code: 'analysis-failed', detail } } as const;
  };
  return {
    run: ((task: AnalysisTask, { priority = 0, signal }: TaskOptions = {}) =>
      queue.add(() => run(task, signal), { priority })) as AnalysisQueue['run'],
    close: async () => {
      queue.clear();
      await Promise.all([...all].map((worker) => worker.terminate()));
      all.clear();
      idle.length = 0;
    },
  };
}

function startWorker(workerData: WorkerStart): Worker {
  const worker = import.meta.url.endsWith('.ts')
    ? startFromSource(workerData)
    : new Worker(findProgram('js'), { workerData });
  worker.on('error', (error) => {
    lastWords.set(worker, String(error));
  });
  worker.unref();
  return worker;
}

/** What threads said when they broke off. */
const lastWords = new WeakMap<Worker, string>();

function findProgram(ending: 'js' | 'ts'): URL {
  return new URL(`./analysis-worker.${ending}`, import.meta.url);
}

/** Run as it stands, the source needs tsx in each thread; Node 20 does not hand its hooks on to threads. */
function startFromSource(workerData: WorkerStart): Worker {
  const tsxFolder = pathToFileURL(createRequire(import.meta.url).resolve('tsx/package.json'));
  const tsx = new URL('./dist/esm/api/index.mjs', tsxFolder).href;
  const program = findProgram('ts').href;
  const start = `import(${JSON.stringify(tsx)}).then((tsx) => { tsx.register(); return import(${JSON.stringify(program)}); })`;
  return new Worker(start, { eval: true, workerData });
}

/** The worker's answer; null where the thread ended instead. */
function ask(
  worker: Worker,
  task: AnalysisTask,
  signal: AbortSignal | undefined,
): Promise<WorkerReply | null> {
  return new Promise((resolve) => {
    const stop = () => worker.postMessage({ order: 'stop' } satisfies WorkerOrder);
    const settle = (reply: WorkerReply | null) => {
      signal?.removeEventListener('abort', stop);
      worker.off('message', settle);
      worker.off('exit', onExit);
      worker.unref();
      resolve(reply);
    };
    const onExit = () => settle(null);
    worker.ref();
    worker.on('message', settle);
    worker.on('exit', onExit);
    signal?.addEventListener('abort', stop);
    worker.postMessage({ order: 'run', task } satisfies WorkerOrder);
  });
}
