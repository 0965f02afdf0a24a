import { existsSync } from 'node:fs';
import { realpath } from 'node:fs/promises';
import path from 'node:path';
import type { QueueProblem } from '../../contract/queue-problem.ts';
import type { EvidenceProblem } from '../../evidence/evidence-problem.ts';
import type { FolderProblem } from '../../intake/folder-problem.ts';
import { fail, type Outcome } from '../../platform/outcome.ts';
import type { AnalysisQueue } from '../analysis-queue.ts';
import { buildTask, type ClipJob, type ClipJobEnd, clipJobSchema, nameClipJob } from './clip-job.ts';
import { startJobWorker, type Undone } from './job-store.ts';

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
  /** Told why a job was given back, or refused where it was tried often enough. */
  readonly onUnfit: (reason: string) => void;
  readonly onSilence: () => void;
}

/** What says nothing of the clip, so that it is tried again. */
const PASSING: readonly EvidenceProblem['code'][] = ['decode-interrupted', 'analysis-failed'];

/** Does the jobs of the store at this address until it is closed. Fails where one of the folders is not there. */
export async function workOff(
  address: string,
  place: WorkPlace,
): Promise<Outcome<{ readonly close: () => Promise<void> }, QueueProblem | FolderProblem>> {
  const { atOnce, onSilence, folders, onUnfit } = place;
  const missing = folders.filter((folder) => !existsSync(folder));
  if (missing.length > 0) return fail(...missing.map((path) => ({ code: 'path-missing', path }) as const));
  return startJobWorker(address, {
    atOnce,
    onSilence,
    work: async (name, data, isLastTry) => {
      const job = clipJobSchema.safeParse(data);
      const misfit = job.success ? await findMisfit(name, job.data, folders) : 'no job of this program';
      if (job.success && misfit === null) return doJob(job.data, place, isLastTry);
      const detail = misfit ?? '';
      onUnfit(detail);
      return isLastTry ? { problems: [{ code: 'analysis-failed', detail }] } : 'unfit';
    },
  });
}

async function findMisfit(name: string, job: ClipJob, folders: readonly string[]): Promise<string | null> {
  if (nameClipJob(job) !== name) return 'the worker is of another version of the program';
  return (await isInPlace(job, folders)) ? null : 'it does not lie in the folders of the worker';
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
): Promise<ClipJobEnd | Undone> {
  const done = await analysis.run(buildTask(job), { signal });
  if (signal.aborted) return 'stopped';
  const problems = done.ok ? getProblems(done.value) : [done.problem];
  const passing = problems.find(({ code }) => PASSING.includes(code));
  if (passing && !isLastTry) throw new Error('detail' in passing ? passing.detail : passing.code);
  onDone(job, problems);
  return { problems };
}

function getProblems(value: unknown): readonly EvidenceProblem[] {
  return (value as ClipJobEnd | null)?.problems ?? [];
}
