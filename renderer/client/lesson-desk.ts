import type { CallInput, CallName } from '../../src-core/contract/calls.ts';
import type { DeskClient, RequestOptions } from '../../src-core/contract/desk-client.ts';
import type { LessonId } from '../../src-core/contract/desk-view.ts';
import type { LessonUpdate } from '../../src-core/contract/lesson-update.ts';
import type { LessonView } from '../../src-core/contract/lesson-view.ts';
import type { Problem } from '../../src-core/contract/problem.ts';
import type { Progress } from '../../src-core/contract/progress.ts';
import type { Reply } from '../../src-core/contract/reply.ts';
import type { JournalAct } from '../../src-core/marking/journal-event.ts';
import { type LessonStore, openLessonStore } from '../storage/lesson-store.ts';
import type { PageDatabase } from '../storage/page-database.ts';
import type { LessonState } from './lesson-state.ts';

/** The calls about a lesson that answer with its update. */
export type UpdatingCall =
  | 'readLesson'
  | 'readClips'
  | 'setClipsFolder'
  | 'savePlan'
  | 'writeHandIn'
  | 'printSheet'
  | 'saveSquads'
  | 'mergeRoster'
  | 'noteConsent';

/** What a page does with an open lesson. One a page and lesson. */
export interface LessonDesk {
  readonly lesson: LessonId;
  readonly client: DeskClient;
  readonly getState: () => LessonState;
  readonly subscribe: (listener: () => void) => () => void;
  /**
   * Records decisions, one undo each: shown at once, kept through crashes, sent until the host has them. Resolves when
   * the host has answered for now; what can never be recorded is in `troubles`.
   */
  readonly decide: (...acts: readonly JournalAct[]) => Promise<void>;
  readonly undo: () => Promise<void>;
  readonly redo: () => Promise<void>;
  /** Resolves when all that was decided is recorded, or cannot be for now. */
  readonly settle: () => Promise<void>;
  /** Reads the folder of clips anew, then watches them where that goes by itself; joins a reading that runs. */
  readonly readClips: () => Promise<void>;
  /** Watches clips that were not watched yet: asked for, or begun again after the teacher has stopped it. */
  readonly watchClips: () => Promise<void>;
  /** Asks with the lesson and the revision that is here, and takes the update that comes back. */
  readonly ask: <Name extends UpdatingCall>(
    name: Name,
    input: Omit<CallInput<Name>, 'lesson' | 'since'>,
    options?: RequestOptions,
  ) => Promise<Reply<Name>>;
  readonly report: (problems: readonly Problem[]) => void;
  readonly putAway: () => void;
  readonly close: () => void;
}

/** What a lesson's desk stands on. */
export interface LessonDeskParts {
  readonly client: DeskClient;
  readonly database: PageDatabase;
  /** The view to begin with. */
  readonly first: LessonView;
  /** Whose name stands beside a decision made now. */
  readonly getWho: () => string;
  /** Whether clips that were read are watched without being asked to. */
  readonly isWatchingByItself: () => boolean;
}

/**
 * Opens the desk of a lesson, beginning with the view that opening gave or that the page has kept; reads its clips
 * where nobody has yet.
 */
export function openLessonDesk(parts: LessonDeskParts): LessonDesk {
  const { client, first } = parts;
  const { lesson } = first;
  const store = openLessonStore({ ...parts, lesson });
  const listeners = new Set<() => void>();
  let state: LessonState = {
    view: first,
    reading: null,
    watching: null,
    waiting: 0,
    troubles: [],
    isReached: true,
  };
  const change = (part: Partial<LessonState>) => {
    state = { ...state, ...part };
    for (const listener of listeners) listener();
  };
  const report = (problems: readonly Problem[]) =>
    problems.length > 0 && change({ troubles: [...state.troubles, ...problems].slice(-20) });
  const leave = store.subscribe(() => {
    const { view, waiting, contact, refused, held } = store.getState();
    const wasRead = state.view.reading.state !== 'unread';
    change({ view: view ?? state.view, waiting, isReached: contact === 'here' });
    if (refused.length > 0) store.dismissRefused();
    // A host that was started anew knows the lesson and not its clips.
    if (wasRead && view?.reading.state === 'unread') void jobs.readNow();
    report([...refused, ...held.filter(({ code }) => state.troubles.every((told) => told.code !== code))]);
  });
  const getState = () => state;
  const jobs = openJobs({ ...parts, lesson, store, getState, change, report });
  void store.take({ kind: 'whole', view: first });
  void store.start();
  jobs.begin();
  return {
    lesson,
    client,
    getState,
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    decide: (...acts) => store.decide(acts).then(store.settle),
    undo: () => store.undo().then(store.settle),
    redo: () => store.redo().then(store.settle),
    settle: store.settle,
    readClips: jobs.readNow,
    watchClips: jobs.watchNow,
    ask: buildAsk(client, lesson, store),
    report,
    putAway: () => change({ troubles: [] }),
    close: () => {
      state.watching?.stop();
      leave();
      store.stop();
    },
  };
}

function buildAsk(
  client: DeskClient,
  lesson: LessonId,
  store: Pick<LessonStore, 'getSince' | 'take'>,
): LessonDesk['ask'] {
  return async (name, input, options) => {
    const whole = { ...input, lesson, since: store.getSince() } as CallInput<typeof name>;
    const reply = await client.request(name, whole, options);
    // What is asked next builds on it: a plan saved on a version that is past would be refused.
    if (reply.ok) await store.take((reply.value as { update: LessonUpdate }).update);
    return reply;
  };
}

/** The long pieces of work of a lesson, each by the part of the state that shows it. */
const JOBS = { reading: 'readClips', watching: 'watchClips' } as const satisfies Record<string, CallName>;

interface Jobs {
  readonly client: DeskClient;
  readonly lesson: LessonId;
  readonly store: Pick<LessonStore, 'getSince' | 'take'>;
  readonly getState: () => LessonState;
  readonly change: (change: Partial<LessonState>) => void;
  readonly report: (problems: readonly Problem[]) => void;
  readonly isWatchingByItself: () => boolean;
}

/** Ends that are no trouble: the teacher stopped it, or the clips are being read anew and it begins again after that. */
const QUIET: readonly Problem['code'][] = ['call-cancelled', 'clips-unread'];

function openJobs(jobs: Jobs) {
  const watchNow = () => runJob(jobs, 'watching');
  const goOn = () => {
    if (jobs.getState().view.reading.state === 'read' && jobs.isWatchingByItself()) void watchNow();
  };
  const readNow = () => runJob(jobs, 'reading').then(goOn);
  const begin = () => void (jobs.getState().view.reading.state === 'read' ? goOn() : readNow());
  return { begin, readNow, watchNow };
}

async function runJob(jobs: Jobs, part: keyof typeof JOBS): Promise<void> {
  const { client, lesson, store, getState, change, report } = jobs;
  if (getState()[part]) return;
  const controller = new AbortController();
  const stop = () => controller.abort();
  const begin: Progress = { step: part === 'reading' ? 'read' : 'watch', done: 0, total: 0 };
  change({ [part]: { progress: begin, secondsLeft: null, stop } });
  const onProgress = (progress: Progress, secondsLeft: number | null) =>
    change({ [part]: { progress, secondsLeft, stop } });
  const input = { lesson, since: store.getSince() };
  const reply = await client.request(JOBS[part], input, { signal: controller.signal, onProgress });
  change({ [part]: null });
  if (reply.ok) await store.take(reply.value.update);
  else report(reply.problems.filter(({ code }) => !QUIET.includes(code)));
}
