import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { gradeClips } from '../../app/grade-lesson.ts';
import type { GradedLesson } from '../../app/graded-lesson.ts';
import { isReadAlike } from '../../app/is-read-alike.ts';
import { type OpenJournal, openJournal, openLesson } from '../../app/open-lesson.ts';
import type { LessonPorts } from '../../app/ports.ts';
import type { ClipsReading } from '../../app/read-clips.ts';
import { blindJournal, buildNoDecisions } from '../../app/second-marking.ts';
import type { LessonId } from '../../contract/desk-view.ts';
import type { LessonUpdate } from '../../contract/lesson-update.ts';
import type { LessonView, ReadingView } from '../../contract/lesson-view.ts';
import type { Problem } from '../../contract/problem.ts';
import type { JournalEvent } from '../../marking/journal-event.ts';
import type { Outcome } from '../../platform/outcome.ts';
import { succeed } from '../../platform/outcome.ts';
import type { CallContext } from './face.ts';
import { openMovementReader } from './movement-reader.ts';
import { readAll } from './reading-job.ts';
import {
  addView,
  buildUpdate,
  type FirstMarking,
  getView,
  openPorts,
  openSessionPorts,
  type SessionPlace,
  type SessionState,
  type SessionWork,
} from './session-state.ts';
import { openSharedJob, type SharedJob } from './shared-job.ts';
import { openWatchingJob, type WatchingJob } from './watching-job.ts';

/** A lesson held open: its files as read, its clips as far as read, and what all of it adds up to. */
export interface LessonSession {
  readonly lesson: LessonId;
  readonly folder: string;
  /** The lesson that this is a second marking of, which can do nothing but mark; null: it is the lesson itself. */
  readonly secondOf: LessonId | null;
  readonly getClipsFolder: () => string;
  readonly getPorts: () => LessonPorts;
  readonly getGraded: () => GradedLesson;
  readonly getView: () => LessonView;
  /** What leads a page with that revision to the present one. */
  readonly getUpdate: (since: number | null) => LessonUpdate;
  /** Looks at plan, roster and journal again when nothing is being written; what changed is told to every face. */
  readonly refresh: () => Promise<Outcome<null, Problem>>;
  /** The same at once, for work that has its turn. */
  readonly rereadFiles: () => Promise<Outcome<null, Problem>>;
  /** Takes a journal over that was just written or read. */
  readonly takeJournal: (journal: OpenJournal) => void;
  readonly readClips: SharedJob<null>;
  /** Resolves when every movement that proposals want has been read. */
  readonly settleMovements: () => Promise<void>;
  /** Watches clips whole that were not watched yet. */
  readonly watching: WatchingJob;
  /** Reads clips from another folder from now on; what was read is forgotten. */
  readonly setClipsFolder: (folder: string | null) => void;
  /** What was read of the clips is forgotten, for it was deleted. */
  readonly forgetClips: () => void;
  /** The journal's events, oldest first. */
  readonly getEvents: () => readonly JournalEvent[];
  /** Runs work that writes one after another. */
  readonly inTurn: <Value>(work: () => Promise<Value>) => Promise<Value>;
  /** The file of a clip on disk; null where there is no such clip. */
  readonly findClipFile: (clip: string) => string | null;
}

const UNREAD: ReadingView = { state: 'unread', done: 0, total: 0 };
const NO_CLIPS: ClipsReading = { clips: [], problems: [] };

/** Opens a lesson folder. Fails where it holds no plan that can be read, or a journal that cannot. */
export async function openSession(place: SessionPlace): Promise<Outcome<LessonSession, Problem>> {
  const { folder } = place;
  const clipsFolder = place.clipsFolder ?? path.join(folder, 'clips');
  const ports = openSessionPorts(place, clipsFolder);
  const files = await readFiles(place, ports);
  if (!files.ok) return files;
  const clips = NO_CLIPS;
  const graded = gradeClips(files.value.lesson, clips);
  const state: SessionState = {
    ...files.value,
    ports,
    clips,
    reading: UNREAD,
    clipsFolder,
    graded,
    views: [],
  };
  addView(place, state);
  return succeed<LessonSession, Problem>(buildSession(place, state), files.problems);
}

function buildSession(place: SessionPlace, state: SessionState): LessonSession {
  const { folder } = place;
  const inTurn = openTurns();
  const regrade = () => {
    state.graded = gradeClips(state.lesson, state.clips);
    place.onChange(addView(place, state).revision);
    movements.look();
  };
  const movements = openMovementReader(state, regrade);
  const work: SessionWork = { state, folder, regrade, settleMovements: movements.settle };
  const reading = openSharedJob((context) => readAll(work, context));
  const rereadFiles = async (): Promise<Outcome<null, Problem>> => {
    const again = await readFiles(place, state.ports);
    if (!again.ok) return again;
    if (isSame(state, again.value)) return succeed(null);
    const isAlike = isReadAlike(state.lesson.plan, again.value.lesson.plan);
    Object.assign(state, again.value);
    if (!isAlike) reading.renew();
    regrade();
    // What was looked at is in the cache.
    if (!isAlike && state.reading.state === 'read') reading.join(hearNobody()).catch(() => {});
    return succeed(null);
  };
  const readFrom = (clipsFolder: string) => {
    const ports = openSessionPorts(place, clipsFolder);
    Object.assign(state, { ports, clips: NO_CLIPS, reading: UNREAD, clipsFolder });
    reading.renew();
    regrade();
  };
  return {
    lesson: place.lesson,
    folder,
    secondOf: place.second?.of ?? null,
    getClipsFolder: () => state.clipsFolder,
    getPorts: () => state.ports,
    getGraded: () => state.graded,
    getView: () => getView(state),
    getUpdate: (since) => buildUpdate(state, since),
    getEvents: () => state.events,
    inTurn,
    refresh: () => inTurn(rereadFiles),
    rereadFiles,
    takeJournal: ({ events, state: own }) => {
      const journal = state.first ? blindJournal(state.first.decisions, own) : own;
      Object.assign(state, { events, lesson: { ...state.lesson, journal } });
      regrade();
    },
    readClips: reading,
    settleMovements: movements.settle,
    watching: openWatchingJob(work),
    setClipsFolder: (chosen) => readFrom(chosen ?? path.join(folder, 'clips')),
    forgetClips: () => readFrom(state.clipsFolder),
    findClipFile: (clip) => {
      const copy = state.clips.clips.find(({ id }) => id === clip)?.copies[0];
      return copy ? path.join(state.clipsFolder, ...copy.file.path.split('/')) : null;
    },
  };
}

/** Work that no face has asked for, and none can stop. */
const hearNobody = (): CallContext => ({ signal: new AbortController().signal, onProgress: () => {} });

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
function isSame(state: SessionState, files: Files): boolean {
  const getParts = ({ planVersion, events, lesson, problems, first }: Files) =>
    JSON.stringify([
      planVersion,
      events.length,
      events.at(-1)?.id,
      lesson.pupils,
      lesson.unshown,
      lesson.filmsDeletedAt,
      problems,
      first?.lastId,
    ]);
  return getParts(state) === getParts(files);
}

type Files = Pick<SessionState, 'lesson' | 'problems' | 'events' | 'planVersion' | 'first'>;

async function readFiles(place: SessionPlace, ports: LessonPorts): Promise<Outcome<Files, Problem>> {
  const planVersion = await readPlanVersion(place.folder);
  const lesson = await openLesson(ports);
  if (!lesson.ok) return lesson;
  const journal = await openJournal(ports);
  if (!journal.ok) return journal;
  const { events, state } = journal.value;
  const first = place.second ? await readFirst(place) : null;
  const own = first ? blindJournal(first.decisions, state) : state;
  return succeed<Files, Problem>(
    { lesson: { ...lesson.value, journal: own }, problems: lesson.problems, events, planVersion, first },
    lesson.problems,
  );
}

/** The lesson's own journal; one that cannot be read has settled nothing. */
async function readFirst({ folder }: SessionPlace): Promise<FirstMarking> {
  const journal = await openJournal(openPorts(folder, path.join(folder, 'clips')));
  if (!journal.ok) return { decisions: buildNoDecisions(), lastId: null };
  const { events, state } = journal.value;
  return { decisions: state.decisions, lastId: events.at(-1)?.id ?? null };
}

/** Stands for the bytes of plan.json as they are now; `none` where there is no such file. */
export async function readPlanVersion(folder: string): Promise<string> {
  const bytes = await readFile(path.join(folder, 'plan.json')).catch(() => null);
  return bytes ? createHash('sha256').update(bytes).digest('hex').slice(0, 32) : 'none';
}
