import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { buildLessonView } from '../../app/build-lesson-view.ts';
import type { ClipReading } from '../../app/clip-reading.ts';
import { gradeClips } from '../../app/grade-lesson.ts';
import type { GradedLesson } from '../../app/graded-lesson.ts';
import { type OpenJournal, type OpenLesson, openJournal, openLesson } from '../../app/open-lesson.ts';
import type { LessonPorts } from '../../app/ports.ts';
import { type ClipsReading, readClips } from '../../app/read-clips.ts';
import type { LessonId } from '../../contract/desk-view.ts';
import { buildPatch, type LessonUpdate } from '../../contract/lesson-update.ts';
import type { LessonView, ReadingView } from '../../contract/lesson-view.ts';
import type { Problem } from '../../contract/problem.ts';
import type { JournalEvent } from '../../marking/journal-event.ts';
import type { Outcome } from '../../platform/outcome.ts';
import { succeed } from '../../platform/outcome.ts';
import { openLessonPorts } from '../lesson-ports.ts';
import type { CallContext } from './face.ts';
import { isDemoFolder } from './lesson-folder.ts';
import { openSharedJob, type SharedJob } from './shared-job.ts';

/** A lesson held open: its files as read, its clips as far as read, and what all of it adds up to. */
export interface LessonSession {
  readonly lesson: LessonId;
  readonly folder: string;
  readonly getClipsFolder: () => string;
  readonly getPorts: () => LessonPorts;
  readonly getGraded: () => GradedLesson;
  readonly getView: () => LessonView;
  /** What leads a page with that revision to the present one. */
  readonly getUpdate: (since: number | null) => LessonUpdate;
  /** Looks at plan, roster and journal again; what changed is told to every face. */
  readonly refresh: () => Promise<Outcome<null, Problem>>;
  /** Takes a journal over that was just written or read. */
  readonly takeJournal: (journal: OpenJournal) => void;
  readonly readClips: SharedJob<null>;
  /** Reads clips from another folder from now on; what was read is forgotten. */
  readonly setClipsFolder: (folder: string | null) => void;
  /** The journal's events, oldest first. */
  readonly getEvents: () => readonly JournalEvent[];
  /** Runs work that writes one after another. */
  readonly inTurn: <Value>(work: () => Promise<Value>) => Promise<Value>;
  /** The file of a clip on disk; null where there is no such clip. */
  readonly findClipFile: (clip: string) => string | null;
}

/** Revisions of which a page is told the difference alone. */
const REMEMBERED_VIEWS = 6;

/** How often, at most, half-read clips are graded and shown. */
const PARTIAL_MS = 400;

interface State {
  ports: LessonPorts;
  lesson: OpenLesson;
  problems: readonly Problem[];
  events: readonly JournalEvent[];
  planVersion: string;
  clips: ClipsReading;
  reading: ReadingView;
  clipsFolder: string;
  graded: GradedLesson;
  /** Newest last, never empty. */
  views: LessonView[];
}

const UNREAD: ReadingView = { state: 'unread', done: 0, total: 0 };
const NO_CLIPS: ClipsReading = { clips: [], problems: [] };

/** Where a lesson lies, and who hears of its changes. */
export interface SessionPlace {
  readonly lesson: LessonId;
  readonly folder: string;
  /** Where its clips are read in place; null: `clips` in its folder. */
  readonly clipsFolder: string | null;
  readonly onChange: (revision: number) => void;
}

/** Opens a lesson folder. Fails where it holds no plan that can be read, or a journal that cannot. */
export async function openSession(place: SessionPlace): Promise<Outcome<LessonSession, Problem>> {
  const { folder } = place;
  const clipsFolder = place.clipsFolder ?? path.join(folder, 'clips');
  const ports = openPorts(folder, clipsFolder);
  const files = await readFiles(ports, folder);
  if (!files.ok) return files;
  const clips = NO_CLIPS;
  const graded = gradeClips(files.value.lesson, clips);
  const state: State = { ...files.value, ports, clips, reading: UNREAD, clipsFolder, graded, views: [] };
  state.views.push(buildView(place, state, Date.now()));
  return succeed<LessonSession, Problem>(buildSession(place, state), files.problems);
}

function buildSession(place: SessionPlace, state: State): LessonSession {
  const { folder } = place;
  const inTurn = openTurns();
  const regrade = () => {
    state.graded = gradeClips(state.lesson, state.clips);
    const view = buildView(place, state, Math.max(getView(state).revision + 1, Date.now()));
    state.views = [...state.views.slice(1 - REMEMBERED_VIEWS), view];
    place.onChange(view.revision);
  };
  const reading = openSharedJob((context) => readAll({ state, folder, regrade }, context));
  return {
    lesson: place.lesson,
    folder,
    getClipsFolder: () => state.clipsFolder,
    getPorts: () => state.ports,
    getGraded: () => state.graded,
    getView: () => getView(state),
    getUpdate: (since) => buildUpdate(state, since),
    getEvents: () => state.events,
    inTurn,
    refresh: async () => {
      const again = await readFiles(state.ports, folder);
      if (!again.ok) return again;
      if (isSame(state, again.value)) return succeed(null);
      const isPlanNew = again.value.planVersion !== state.planVersion;
      Object.assign(state, again.value);
      regrade();
      // Stamps and cards are read by the plan's zone and squads; what was looked at is in the cache.
      if (isPlanNew && state.reading.state === 'read') reading.join(UNHEARD).catch(() => {});
      return succeed(null);
    },
    takeJournal: ({ events, state: journal }) => {
      Object.assign(state, { events, lesson: { ...state.lesson, journal } });
      regrade();
    },
    readClips: reading,
    setClipsFolder: (chosen) => {
      const clipsFolder = chosen ?? path.join(folder, 'clips');
      const ports = openPorts(folder, clipsFolder);
      Object.assign(state, { ports, clips: NO_CLIPS, reading: UNREAD, clipsFolder });
      regrade();
    },
    findClipFile: (clip) => {
      const copy = state.clips.clips.find(({ id }) => id === clip)?.copies[0];
      return copy ? path.join(state.clipsFolder, ...copy.file.path.split('/')) : null;
    },
  };
}

function getView({ views }: State): LessonView {
  const view = views.at(-1);
  if (!view) throw new Error('a session has a view from the start');
  return view;
}

/** Work handed to it runs one after another. */
function openTurns(): LessonSession['inTurn'] {
  let queue: Promise<unknown> = Promise.resolve();
  return (work) => {
    const turn = queue.then(work, work);
    queue = turn.catch(() => {});
    return turn;
  };
}

/** Whether the files say what they said before. */
function isSame(state: State, files: Files): boolean {
  const getParts = ({ planVersion, events, lesson, problems }: Files) =>
    JSON.stringify([planVersion, events.length, events.at(-1)?.id, lesson.pupils, problems]);
  return getParts(state) === getParts(files);
}

/** Jobs carry their own signal; what these ports do beside is short. */
function openPorts(folder: string, clipsFolder: string): LessonPorts {
  return openLessonPorts({ folder, clipsFolder, signal: new AbortController().signal });
}

type Files = Pick<State, 'lesson' | 'problems' | 'events' | 'planVersion'>;

async function readFiles(ports: LessonPorts, folder: string): Promise<Outcome<Files, Problem>> {
  const planVersion = await readPlanVersion(folder);
  const lesson = await openLesson(ports);
  if (!lesson.ok) return lesson;
  const journal = await openJournal(ports);
  if (!journal.ok) return journal;
  const { events, state } = journal.value;
  return succeed<Files, Problem>(
    { lesson: { ...lesson.value, journal: state }, problems: lesson.problems, events, planVersion },
    lesson.problems,
  );
}

/** Stands for the bytes of plan.json as they are now; `none` where there is no such file. */
export async function readPlanVersion(folder: string): Promise<string> {
  const bytes = await readFile(path.join(folder, 'plan.json')).catch(() => null);
  return bytes ? createHash('sha256').update(bytes).digest('hex').slice(0, 32) : 'none';
}

function buildView(place: SessionPlace, state: State, revision: number): LessonView {
  return buildLessonView(state.graded, {
    lesson: place.lesson,
    revision,
    path: place.folder,
    clipsPath: state.clipsFolder,
    isDemo: isDemoFolder(place.folder),
    planVersion: state.planVersion,
    problems: state.problems,
    reading: state.reading,
    events: state.events,
  });
}

function buildUpdate(state: State, since: number | null): LessonUpdate {
  const view = getView(state);
  const from = state.views.find(({ revision }) => revision === since);
  return from ? { kind: 'patch', patch: buildPatch(from, view) } : { kind: 'whole', view };
}

interface ReadAll {
  readonly state: State;
  readonly folder: string;
  readonly regrade: () => void;
}

/** Work that no face has asked for, and none can stop. */
const UNHEARD: CallContext = { signal: new AbortController().signal, onProgress: () => {} };

async function readAll({ state, folder, regrade }: ReadAll, context: CallContext): Promise<null> {
  const { signal } = context;
  const ports = openLessonPorts({ folder, clipsFolder: state.clipsFolder, signal });
  const before = new Map(state.clips.clips.map((clip) => [clip.id, clip]));
  let shownMs = 0;
  const show = (clips: ClipsReading, reading: ReadingView) => {
    Object.assign(state, { clips, reading });
    shownMs = performance.now();
    regrade();
  };
  const onClips = (getClips: () => readonly ClipReading[]) => {
    const isDue = state.reading.state !== 'cards' || performance.now() - shownMs > PARTIAL_MS;
    if (isDue && !signal.aborted)
      show(
        { clips: getClips().map((clip) => keepSearch(clip, before)), problems: [] },
        { ...state.reading, state: 'cards' },
      );
  };
  const onProgress: CallContext['onProgress'] = (progress) => {
    const { step, done, total } = progress;
    state.reading = { state: step === 'read' ? 'stamps' : 'cards', done, total };
    context.onProgress(progress);
  };
  try {
    state.reading = { state: 'stamps', done: 0, total: 0 };
    const clips = await readClips(ports, state.lesson.plan, { signal, onProgress, onClips });
    show(clips, { state: 'read', done: clips.clips.length, total: clips.clips.length });
    return null;
  } catch (reason) {
    show(state.clips, { ...state.reading, state: 'stopped' });
    throw reason;
  }
}

/** A clip that was searched before and is not yet again keeps what was found, so that nothing flickers. */
function keepSearch(clip: ClipReading, before: ReadonlyMap<string, ClipReading>): ClipReading {
  const known = before.get(clip.id);
  if (!known || clip.card !== null || clip.lookProblems.length > 0) return clip;
  return { ...clip, card: known.card, lookProblems: known.lookProblems };
}
