import { fork } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { Progress } from '../../src-core/contract/progress.ts';

/** What the filming process tells on its way. */
export type FilmNews =
  | { readonly kind: 'progress'; readonly done: number; readonly total: number }
  | { readonly kind: 'failed'; readonly reason: string };

/** What filming needs of the program. */
export interface FilmPlaces {
  /** The folder that holds the program's sources, as a `file:` address. */
  readonly root: string;
  /** Where finished films are kept; the program's own folder may not be written. */
  readonly films: string;
}

/**
 * Films the demo lesson in a process of its own, run as Node, so that the windows stay quick. Rejects with the reason
 * where it fails, and when it is stopped.
 */
export function filmDemoApart(
  { root, films }: FilmPlaces,
  folder: string,
  job: { readonly signal: AbortSignal; readonly onProgress: (progress: Progress) => void },
): Promise<void> {
  const program = fileURLToPath(new URL('electron/main/film-demo-process.ts', root));
  const child = fork(program, [folder], {
    cwd: fileURLToPath(root),
    execArgv: ['--import', 'tsx'],
    env: { ...process.env, ELECTRON_RUN_AS_NODE: '1', ROUTEMARK_FILMS: films },
    stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
  });
  let reason = 'it ended too early';
  const stop = () => {
    if (child.connected) child.disconnect();
  };
  job.signal.addEventListener('abort', stop);
  child.on('message', (news: FilmNews) => {
    if (news.kind === 'failed') reason = news.reason;
    else job.onProgress({ step: 'film', done: news.done, total: news.total });
  });
  return new Promise((resolve, reject) => {
    child.once('error', reject);
    child.once('exit', (code) => {
      job.signal.removeEventListener('abort', stop);
      if (job.signal.aborted) reject(job.signal.reason);
      else if (code === 0) resolve();
      else reject(new Error(reason));
    });
  });
}
