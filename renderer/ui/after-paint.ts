import { useEffect, useState } from 'react';

/** A window that is not shown paints nothing; work goes on all the same. */
const UNPAINTED_MS = 250;

/** What waits for the frame that is to come; null: nothing does. */
let waiting: Set<() => void> | null = null;

/**
 * Runs work once what is being changed now is on the screen, so that a key is answered before anything else is begun.
 * Gives the way to call it off.
 */
export function afterPaint(work: () => void): () => void {
  waiting ??= openBatch();
  const batch = waiting;
  const run = () => work();
  batch.add(run);
  return () => {
    batch.delete(run);
  };
}

/** Everything that is put off in one frame waits together: each wait by itself would cost the key. */
function openBatch(): Set<() => void> {
  const batch = new Set<() => void>();
  const close = () => {
    if (waiting === batch) waiting = null;
  };
  const begin = () => {
    clearTimeout(timer);
    close();
    // One by one, so that a key which comes meanwhile goes first.
    for (const run of batch) setTimeout(() => batch.delete(run) && run());
  };
  const timer = setTimeout(begin, UNPAINTED_MS);
  // The first frame draws it; only when the next one comes was it handed on.
  requestAnimationFrame(() => {
    close();
    requestAnimationFrame(begin);
  });
  return batch;
}

/** Whether a part of the page was painted once: what is dear to build and not looked at first waits for that. */
export function useIsPainted(): boolean {
  const [isPainted, setPainted] = useState(false);
  useEffect(() => afterPaint(() => setPainted(true)), []);
  return isPainted;
}
