import { realpath } from 'node:fs/promises';
import path from 'node:path';
import type { QueueProblem } from '../../contract/queue-problem.ts';
import type { EvidenceProblem } from '../../evidence/evidence-problem.ts';
import type { Outcome } from '../../platform/outcome.ts';
import type { AnalysisQueue } from '../analysis-queue.ts';
import { buildTask, type ClipJob, type ClipJobEnd, clipJobSchema, nameClipJob } from './clip-job.ts';
import { startJobWorker } from './job-store.ts';

/** What a worker works with. */
export interface WorkPlace {
  /** Folders that lessons lie in; nothing outside them is read or written, whatever a job says. */
  readonly folders: readonly string[];
  readonly analysis: AnalysisQueue;
  /** Clips at once. */
  readonly atOnce: number;
  readonly signal: AbortSignal;
  /** Told of each job that was done. */
  readonly onDone: (job: ClipJob, problems: readonly EvidenceProblem[]) => void;
  readonly onSilence: () => void;
}

/** What says nothing of the clip, so that it is tried again. */
const PASSING: readonly EvidenceProblem['code'][] = ['decode-interrupted', 'analysis-failed'];

/** Does the jobs of the store at this address until it is closed. */
export function workOff(
  address: string,
  place: WorkPlace,
): Promise<Outcome<{ readonly close: () => Promise<void> }, QueueProblem>> {
  const { atOnce, onSilence } = place;
  return startJobWorker(address, {
    atOnce,
    onSilence,
    work: async (name, data, isLastTry) => {
      const job = clipJobSchema.safeParse(data);
      if (!job.success) return refuse('no job of this program');
      if (nameClipJob(job.data) !== name) return refuse('the worker is of another version of the program');
      if (!(await isInPlace(job.data, place.folders)))
        return refuse('it does not lie in the folders of the worker');
      return doJob(job.data, place, isLastTry);
    },
  });
}

function refuse(detail: string): ClipJobEnd {
  return { problems: [{ code: 'analysis-failed', detail }] };
}

/** Whether clip and evidence lie in one lesson folder below one of these, links resolved. */
async function isInPlace({ path: clip, cacheFolder }: ClipJob, folders: readonly string[]): Promise<boolean> {
  const lesson = path.dirname(cacheFolder);
  const [realClip, realLesson, realCache, ...real] = await Promise.all(
    [clip, lesson, cacheFolder, ...folders].map((one) => realpath(one).catch(() => null)),
  );
  if (!realClip || !realLesson || path.basename(cacheFolder) !== 'evidence') return false;
  if (realCache && realCache !== path.join(realLesson, 'evidence')) return false;
  const isWithin = (folder: string) => realLesson === folder || realLesson.startsWith(folder + path.sep);
  return realClip.startsWith(realLesson + path.sep) && real.some((folder) => folder && isWithin(folder));
}

async function doJob(
  job: ClipJob,
  { analysis, signal, onDone }: WorkPlace,
  isLastTry: boolean,
): Promise<ClipJobEnd | null> {
  const done = await analysis.run(buildTask(job), { signal });
  if (signal.aborted) return null;
  const problems = done.ok ? getProblems(done.value) : [done.problem];
  const passing = problems.find(({ code }) => PASSING.includes(code));
  if (passing && !isLastTry) throw new Error('detail' in passing ? passing.detail : passing.code);
  onDone(job, problems);
  return { problems };
}

function getProblems(value: unknown): readonly EvidenceProblem[] {
  return (value as ClipJobEnd | null)?.problems ?? [];
}
