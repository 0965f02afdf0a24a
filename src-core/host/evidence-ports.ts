import type { LessonPorts, LookReading, WatchReading } from '../app/ports.ts';
import { createAnalysisPool, OPENED_FIRST } from './analysis-pool.ts';
import type { AnalysisQueue } from './analysis-queue.ts';
import type { AnalysisTask } from './analysis-task.ts';
import { openEvidenceCache } from './evidence-cache.ts';
import { recallLook } from './look-at-clip.ts';
import { recallMovement } from './read-clip-movement.ts';
import { readStrip } from './read-strip.ts';
import { recallWatch } from './watch-clip.ts';

/** Where a lesson's clips lie, and where what was found in them is kept. */
export interface EvidencePlace {
  readonly cacheFolder: string;
  /** The absolute path of a clip. */
  readonly getFile: (relative: string) => string;
  readonly signal: AbortSignal;
  /** Where clips are analysed; the threads of this process unless given. */
  readonly analysis?: AnalysisQueue;
}

let shared: AnalysisQueue | null = null;

/** One pool for all lessons of a process: there are only so many cores. */
export function getAnalysisPool(): AnalysisQueue {
  shared ??= createAnalysisPool();
  return shared;
}

/** The ports that look at clips: what the cache knows is answered at once, the rest goes to the analysis queue. */
export function openEvidencePorts({
  cacheFolder,
  getFile,
  signal,
  analysis = getAnalysisPool(),
}: EvidencePlace): Pick<LessonPorts, 'lookAt' | 'watch' | 'recallWatch' | 'readStrip' | 'readMovement'> {
  const cache = openEvidenceCache(cacheFolder);
  const run = <Task extends AnalysisTask>(task: Task, isOpened = false) =>
    analysis.run(task, { signal, ...(isOpened && { priority: OPENED_FIRST }) });
  return {
    lookAt: async (relative, contentId): Promise<LookReading> => {
      const known = await recallLook(cache, contentId, true);
      if (known) return known;
      const clip = { path: getFile(relative), contentId };
      const done = await run({ kind: 'look', cacheFolder, clip, searchCards: true });
      return done.ok ? done.value : { readings: [], look: null, problems: [done.problem] };
    },
    watch: async (relative, contentId, isOpened): Promise<WatchReading> => {
      const known = await recallWatch(cache, contentId);
      if (known) return known;
      const clip = { path: getFile(relative), contentId };
      const done = await run({ kind: 'watch', cacheFolder, clip, threads: 1 }, isOpened);
      return done.ok ? done.value : { print: { seconds: [] }, problems: [done.problem] };
    },
    recallWatch: (contentId) => recallWatch(cache, contentId),
    readStrip: (contentId, wanted) => readStrip(cache, contentId, wanted),
    readMovement: async (contentId, options) => {
      const known = await recallMovement(cache, contentId, options);
      if (known) return known;
      const done = await run({ kind: 'movement', cacheFolder, clip: { path: '', contentId }, options });
      return done.ok ? done.value : null;
    },
  };
}
