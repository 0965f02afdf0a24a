import PQueue from 'p-queue';
import { describeProblem } from '../../../renderer/text/english/problems.ts';
import { WATCHING } from '../../../renderer/text/english/watching.ts';
import type { Job } from '../../app/ports.ts';
import { type WatchedClip, type WatchedLesson, watchLesson } from '../../app/watch-lesson.ts';
import type { Problem } from '../../contract/problem.ts';
import type { Progress } from '../../contract/progress.ts';
import { getAnalysisPool } from '../../host/evidence-ports.ts';
import { findLessonFolders } from '../../host/find-lesson-folders.ts';
import type { LessonPlace } from '../../host/lesson-ports.ts';
import { handOut } from '../../host/queue/hand-out.ts';
import { openJobStore } from '../../host/queue/job-store.ts';
import { openFolder } from '../open-folder.ts';
import { formatJson, PLAIN_NAMES, sayProblems, toJsonProblem } from '../say.ts';
import { formatTable } from '../table.ts';
import type { ExitCode, Terminal } from '../terminal.ts';

/** The options of `watch` as typed. */
export interface WatchOptions {
  /** Address of a Redis; clips are watched in this process without one. */
  readonly queue?: string;
  readonly json?: boolean;
}

/** Lessons at once: while the clips of one are watched, the files of others are read. */
const LESSONS_AT_ONCE = 4;

/** Clips of a lesson that are handed out at once: more than any school's workers do, few enough to ask after. */
const HANDED_OUT_AT_ONCE = 64;

type Analysis = NonNullable<LessonPlace['analysis']>;

interface Row {
  readonly folder: string;
  /** Null: the lesson could not be opened, and it was said why. */
  readonly seen: WatchedLesson | null;
}

/** `watch <folders…>`: looks at and watches every clip of many lessons, here or by workers; records nothing. */
export async function runWatch(
  folders: readonly string[],
  options: WatchOptions,
  terminal: Terminal,
): Promise<ExitCode> {
  const named = await Promise.all(
    folders.map(async (path) => ({ path, lessons: await findLessonFolders([path]) })),
  );
  const missing = named.filter(({ lessons }) => lessons.length === 0);
  const problems = missing.map(({ path }): Problem => ({ code: 'no-lessons-found', paths: [path] }));
  sayProblems(terminal, problems, PLAIN_NAMES);
  if (missing.length === named.length) return 2;
  const analysis = await openAnalysis(options.queue, terminal);
  if (!analysis) return 2;
  const lessons = [...new Set(named.flatMap((one) => one.lessons))];
  const rows = await watchAll(lessons, analysis, terminal).finally(() => analysis.queue.close());
  terminal.write(options.json ? formatJson({ lessons: rows.map(buildEntry) }) : formatRows(rows));
  return missing.length > 0 || rows.some(hasTrouble) ? 1 : 0;
}

/** Null, and said why: the address leads to no queue. */
async function openAnalysis(address: string | undefined, terminal: Terminal): Promise<Analysis | null> {
  if (address === undefined) return { queue: getAnalysisPool() };
  const store = await openJobStore(address, () => terminal.say(`${WATCHING.silence}\n`));
  if (!store.ok) {
    sayProblems(terminal, store.problems, PLAIN_NAMES);
    return null;
  }
  if ((await store.value.countWorkers()) === 0) terminal.say(`${WATCHING.noWorker}\n`);
  return { queue: handOut(store.value, getAnalysisPool()), atOnce: HANDED_OUT_AT_ONCE };
}

function watchAll(lessons: readonly string[], analysis: Analysis, terminal: Terminal): Promise<Row[]> {
  const queue = new PQueue({ concurrency: LESSONS_AT_ONCE });
  const share = shareProgress(terminal.job);
  return queue.addAll(
    lessons.map((folder) => async () => {
      terminal.signal.throwIfAborted();
      const open = await openFolder(folder, { analysis }, terminal);
      return { folder, seen: open && (await watchLesson(open.ports, open.lesson, share(folder))) };
    }),
  );
}

/** The progress of several lessons as one: all clips that are watched, of all that are to be. */
function shareProgress({ signal, onProgress }: Job): (folder: string) => Job {
  const byFolder = new Map<string, Progress>();
  return (folder) => ({
    signal,
    onProgress: (progress) => {
      if (progress.step !== 'watch') return;
      byFolder.set(folder, progress);
      const all = [...byFolder.values()];
      const add = (of: 'done' | 'total') => all.reduce((sum, one) => sum + one[of], 0);
      onProgress({ step: 'watch', done: add('done'), total: add('total') });
    },
  });
}

function hasTrouble({ seen }: Row): boolean {
  return seen === null || seen.clips.some(({ state }) => state === 'failed');
}

function buildEntry({ folder, seen }: Row): object {
  return {
    folder,
    isOpened: seen !== null,
    watchedNow: seen?.watchedNow ?? 0,
    clips: (seen?.clips ?? []).map(({ problems, ...clip }) => ({
      ...clip,
      problems: problems.map((problem) => toJsonProblem(problem, PLAIN_NAMES)),
    })),
  };
}

function formatRows(rows: readonly Row[]): string {
  return formatTable(rows.flatMap(buildRows));
}

function buildRows({ folder, seen }: Row): string[][] {
  if (!seen) return [[folder, WATCHING.unopened]];
  const { clips, watchedNow } = seen;
  const count = (state: WatchedClip['state']) => clips.filter((clip) => clip.state === state).length;
  const [failed, passedOver] = [count('failed'), count('passed-over')];
  const said = [
    WATCHING.watched(count('watched'), watchedNow),
    ...(passedOver > 0 ? [WATCHING.passedOver(passedOver)] : []),
    ...(failed > 0 ? [WATCHING.failed(failed)] : []),
  ];
  const failures = clips.filter(({ state }) => state === 'failed');
  return [
    [folder, WATCHING.clips(clips.length), said.join(', ')],
    ...failures.map(({ file, problems: [first] }) => [
      '',
      '',
      `! ${file}${first ? `: ${describeProblem(first, PLAIN_NAMES).what}` : ''}`,
    ]),
  ];
}
