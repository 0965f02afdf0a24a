import { useEffect, useState } from 'react';

/** A window that is not shown paints nothing; work goes on all the same. */
const UNPAINTED_MS = 250;

/**
 * Runs work once what is being changed now is on the screen, so that a key is answered before anything else is begun.
 * Gives the way to call it off.
 */
export function afterPaint(work: () => void): () => void {
  let isOver = false;
  const run = () => {
    if (isOver) return;
    isOver = true;
    clearTimeout(timer);
    work();
  };
  const timer = setTimeout(run, UNPAINTED_MS);
  // The first frame draws it; only when the next one comes was it handed on.
  requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(run)));
  return () => {
    isOver = true;
    clearTimeout(timer);
  };
}

/** Whether a part of the page was painted once: what is dear to build and not looked at first waits for that. */
export function useIsPainted(): boolean {
  const [isPainted, setPainted] = useState(false);
  useEffect(() => afterPaint(() => setPainted(true)), []);
  return isPainted;
}
