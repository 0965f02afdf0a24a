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
let background: AnalysisQueue | null = null;

/** One pool for all lessons of a process, for what somebody waits for: there are only so many cores. */
export function getAnalysisPool(): AnalysisQueue {
  shared ??= createAnalysisPool();
  return shared;
}

/** The pool for clips that are watched while the teacher is at something else; all else goes before it. */
function getBackgroundPool(): AnalysisQueue {
  background ??= createAnalysisPool(undefined, true);
  return background;
}

/** The ports that look at clips: what the cache knows is answered at once, the rest goes to the analysis queue. */
export function openEvidencePorts({
  cacheFolder,
  getFile,
  signal,
  analysis,
}: EvidencePlace): Pick<LessonPorts, 'lookAt' | 'watch' | 'recallWatch' | 'readStrip' | 'readMovement'> {
  const cache = openEvidenceCache(cacheFolder);
  const run = <Task extends AnalysisTask>(task: Task, priority = 0) =>
    (analysis ?? getAnalysisPool()).run(task, { signal, priority });
  return {
    lookAt: async (relative, contentId, durationSeconds): Promise<LookReading> => {
      const known = await recallLook(cache, contentId, true);
      if (known) return known;
      const clip = { path: getFile(relative), contentId, durationSeconds };
      const done = await run({ kind: 'look', cacheFolder, clip, searchCards: true });
      return done.ok ? done.value : { readings: [], look: null, problems: [done.problem] };
    },
    watch: async (relative, contentId, urgency): Promise<WatchReading> => {
      const known = await recallWatch(cache, contentId);
      if (known) return known;
      const clip = { path: getFile(relative), contentId };
      const isBackground = urgency === 'background';
      const task = { kind: 'watch', cacheFolder, clip, threads: 1, isBackground } as const;
      const done = isBackground
        ? await (analysis ?? getBackgroundPool()).run(task, { signal })
        : await run(task, urgency === 'opened' ? OPENED_FIRST : 0);
      return done.ok ? done.value : { print: { seconds: [] }, problems: [done.problem] };
    },
    recallWatch: (contentId) => recallWatch(cache, contentId),
    readStrip: (contentId, wanted) => readStrip(cache, contentId, wanted),
    readMovement: async (contentId, options) => {
      const known = await recallMovement(cache, contentId, options);
      if (known) return known;
      // Decodes nothing and takes a moment; a proposal waits for it, or the teacher.
      const task = { kind: 'movement', cacheFolder, clip: { path: '', contentId }, options } as const;
      const done = await run(task, OPENED_FIRST);
      return done.ok ? done.value : null;
    },
  };
}
