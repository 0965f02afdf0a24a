import { type FSWatcher, unwatchFile, watch, watchFile } from 'node:fs';
import path from 'node:path';

/** The files of a lesson that other programs may change: the command line, an editor, a synchronising program. */
const WATCHED = ['plan.json', 'roster.csv', 'marks.jsonl'];

/** Several changes in a row are one. */
const REST_MS = 120;

/** Where the system cannot tell of changes (network drives), the files are looked at this often. */
const POLL_MS = 2000;

/** Tells when plan, roster or journal may have changed. Gives the way to end it. */
export function watchLesson(folder: string, onChange: () => void): () => void {
  let timer: NodeJS.Timeout | undefined;
  const changed = () => {
    clearTimeout(timer);
    timer = setTimeout(onChange, REST_MS);
  };
  const watcher = watchFolder(folder, (name) => {
    if (name === null || WATCHED.includes(name)) changed();
  });
  const files = WATCHED.map((name) => path.join(folder, name));
  for (const file of files) watchFile(file, { interval: POLL_MS, persistent: false }, changed);
  return () => {
    clearTimeout(timer);
    watcher?.close();
    for (const file of files) unwatchFile(file, changed);
  };
}

function watchFolder(folder: string, onChange: (name: string | null) => void): FSWatcher | null {
  try {
    const watcher = watch(folder, { persistent: false }, (_, name) => onChange(name));
    // A folder that goes away, with its stick, ends the watch; the polling goes on.
    watcher.on('error', () => watcher.close());
    return watcher;
  } catch {
    return null;
  }
}
