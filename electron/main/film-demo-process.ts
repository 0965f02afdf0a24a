// Films the demo lesson into the folder given as its argument, as a process of its own; see film-demo.ts.

import { buildDemoLesson } from '../../fixtures/build-demo-lesson.ts';
import type { FilmNews } from './film-demo.ts';

const [folder = ''] = process.argv.slice(2);
const stop = new AbortController();
const tell = (news: FilmNews) => process.send?.(news);

// A closed line is the wish to stop, or a main process that is gone.
process.once('disconnect', () => stop.abort());

try {
  await buildDemoLesson(folder, {
    replace: true,
    signal: stop.signal,
    onProgress: ({ done, total }) => tell({ kind: 'progress', done, total }),
  });
} catch (fault) {
  if (process.connected)
    tell({ kind: 'failed', reason: fault instanceof Error ? fault.message : String(fault) });
  process.exitCode = 1;
}
if (process.connected) process.disconnect();
