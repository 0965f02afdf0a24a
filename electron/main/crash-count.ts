/** How often a page that crashed is brought back before the teacher is asked. */
const MOST_RETURNS = 3;

/** Within this time. */
const WITHIN_MS = 60_000;

/** What to do with a page that has crashed: `reload` it, or `ask`, for it crashes again and again. */
export type AfterCrash = 'reload' | 'ask';

/** Counts crashes of the page. Nothing decided is lost by one: the journal has it, and the page's outbox the rest. */
export function openCrashCount(nowMs: () => number): () => AfterCrash {
  let crashes: readonly number[] = [];
  return () => {
    const now = nowMs();
    crashes = [...crashes.filter((at) => now - at < WITHIN_MS), now];
    return crashes.length > MOST_RETURNS ? 'ask' : 'reload';
  };
}
