import type { Job } from '../app/ports.ts';
import type { Progress } from '../contract/progress.ts';

/** How a command ended: 0 done, 1 done with problems to look at, 2 could not be done. */
export type ExitCode = 0 | 1 | 2;

/** What a command may touch of the world: two streams and the wish to stop. */
export interface Terminal {
  /** Results; the only thing a pipe ever sees. */
  readonly write: (text: string) => void;
  /** Talk beside the result: problems, hints. */
  readonly say: (text: string) => void;
  readonly job: Job;
  /** Set by Ctrl-C. */
  readonly signal: AbortSignal;
  /** Columns of the screen; 100 in a pipe. */
  readonly width: number;
}

/** The words of progress, by step. */
export type StepWords = Readonly<Record<Progress['step'], string>>;

const CLEAR_LINE = '\r\u001B[K';

/**
 * The terminal of this process. Progress is drawn on the error stream and only where that is a screen; Ctrl-C
 * stops the work at its next safe point, a second one at once.
 */
export function openTerminal(words: StepWords): Terminal {
  const controller = new AbortController();
  process.on('SIGINT', () => {
    if (controller.signal.aborted) process.exit(130);
    controller.abort();
  });
  process.stdout.on('error', bearClosedPipe);
  process.stderr.on('error', bearClosedPipe);
  let drawn = false;
  const wipe = () => {
    if (drawn) process.stderr.write(CLEAR_LINE);
    drawn = false;
  };
  const onProgress = ({ step, done, total }: Progress) => {
    if (!process.stderr.isTTY) return;
    wipe();
    if (done < total) {
      process.stderr.write(`${words[step]} ${done} / ${total}`);
      drawn = true;
    }
  };
  return {
    write: (text) => {
      wipe();
      process.stdout.write(text);
    },
    say: (text) => {
      wipe();
      process.stderr.write(text);
    },
    job: { signal: controller.signal, onProgress },
    signal: controller.signal,
    width: process.stdout.columns ?? 100,
  };
}

/** Whoever read the output has gone, as `head` does: nobody is left to talk to, and the work goes on. */
function bearClosedPipe(error: NodeJS.ErrnoException): void {
  if (error.code !== 'EPIPE') throw error;
}
