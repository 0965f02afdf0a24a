import type { Progress } from '../../contract/progress.ts';
import type { CallContext } from './face.ts';

/** Work that several faces may wait for at once. */
export interface SharedJob<Value> {
  /** Waits for the work; it starts with the first. A face that cancels leaves, and the last one to leave ends it. */
  readonly join: (context: CallContext) => Promise<Value>;
  readonly isRunning: () => boolean;
  /** What the work stands on has changed: work under way is done once more before it counts as done. */
  readonly renew: () => void;
}

interface Run<Value> {
  readonly result: Promise<Value>;
  readonly waiting: Set<CallContext>;
  readonly controller: AbortController;
  lastProgress: Progress | null;
  isOutdated: boolean;
}

/** Work that runs once at a time, however many ask for it. */
export function openSharedJob<Value>(work: (context: CallContext) => Promise<Value>): SharedJob<Value> {
  let running: Run<Value> | null = null;
  const start = (): Run<Value> => {
    const controller = new AbortController();
    const waiting = new Set<CallContext>();
    const onProgress = (progress: Progress) => {
      run.lastProgress = progress;
      for (const one of waiting) one.onProgress(progress);
    };
    const workOn = async (): Promise<Value> => {
      run.isOutdated = false;
      const value = await work({ signal: controller.signal, onProgress });
      return run.isOutdated ? workOn() : value;
    };
    const result = Promise.resolve()
      .then(workOn)
      .finally(() => {
        if (running === run) running = null;
      });
    // Every face may have left before it fails.
    result.catch(() => {});
    const run: Run<Value> = { result, waiting, controller, lastProgress: null, isOutdated: false };
    return run;
  };
  return {
    isRunning: () => running !== null,
    renew: () => {
      if (running) running.isOutdated = true;
    },
    join: async (context) => {
      context.signal.throwIfAborted();
      running ??= start();
      const run = running;
      run.waiting.add(context);
      if (run.lastProgress) context.onProgress(run.lastProgress);
      try {
        return await Promise.race([run.result, rejectOnAbort(context.signal)]);
      } finally {
        run.waiting.delete(context);
        if (context.signal.aborted && run.waiting.size === 0) {
          run.controller.abort(context.signal.reason);
          // Whoever asks next begins anew instead of joining what is ending.
          if (running === run) running = null;
        }
      }
    },
  };
}

function rejectOnAbort(signal: AbortSignal): Promise<never> {
  return new Promise((_, reject) => {
    signal.addEventListener('abort', () => reject(signal.reason), { once: true });
  });
}
