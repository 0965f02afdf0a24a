import { buildLessonView } from '../../app/build-lesson-view.ts';
import type { GradedLesson } from '../../app/graded-lesson.ts';
import type { OpenLesson } from '../../app/open-lesson.ts';
import type { LessonPorts } from '../../app/ports.ts';
import type { ClipsReading } from '../../app/read-clips.ts';
import type { LessonId } from '../../contract/desk-view.ts';
import { buildPatch, type LessonUpdate } from '../../contract/lesson-update.ts';
import type { LessonView, ReadingView } from '../../contract/lesson-view.ts';
import type { Problem } from '../../contract/problem.ts';
import type { Decisions } from '../../marking/decisions.ts';
import type { JournalEvent } from '../../marking/journal-event.ts';
import { openLessonPorts } from '../lesson-ports.ts';
import { withSecondJournal } from '../second-marks.ts';
import { isDemoFolder } from './lesson-folder.ts';

/** All that an open lesson stands on; its session alone changes it, and a view follows each change. */
export interface SessionState {
  ports: LessonPorts;
  lesson: OpenLesson;
  problems: readonly Problem[];
  events: readonly JournalEvent[];
  planVersion: string;
  clips: ClipsReading;
  reading: ReadingView;
  clipsFolder: string;
  graded: GradedLesson;
  /** Of the lesson's own journal, for a second marking; null in all others. */
  first: FirstMarking | null;
  /** Newest last, never empty. */
  views: LessonView[];
}

/** What a second marking stands on and does not show. */
export interface FirstMarking {
  readonly decisions: Decisions;
  /** Stands for the journal as it is; null while it is empty. */
  readonly lastId: string | null;
}

/** Where a lesson lies, and who hears of its changes. */
export interface SessionPlace {
  readonly lesson: LessonId;
  readonly folder: string;
  /** Where its clips are read in place; null: `clips` in its folder. */
  readonly clipsFolder: string | null;
  /** Whose second marking it is; null: the lesson itself. */
  readonly second: SecondMarker | null;
  readonly onChange: (revision: number) => void;
}

/** A second marker: the name, and that of the journal's file without its ending. */
export interface SecondMarker {
  readonly who: string;
  readonly file: string;
  /** The lesson that is marked a second time. */
  readonly of: LessonId;
}

/** What the long pieces of work of a session are given. */
export interface SessionWork {
  readonly state: SessionState;
  readonly folder: string;
  /** Grades what is known now, and tells of it. */
  readonly regrade: () => void;
  /** Resolves when every movement that proposals want has been read. */
  readonly settleMovements: () => Promise<void>;
}

/** Revisions of which a page is told the difference alone. */
const REMEMBERED_VIEWS = 6;

/** The newest view, of what was graded last; there is one from the session's first moment. */
export function getView({ views }: SessionState): LessonView {
  const view = views.at(-1);
  if (!view) throw new Error('a session has a view from the start');
  return view;
}

/** Adds the view of what is known now; its revision is above all that came before. */
export function addView(place: SessionPlace, state: SessionState): LessonView {
  const before = state.views.at(-1)?.revision ?? 0;
  const view = buildLessonView(state.graded, {
    lesson: place.lesson,
    revision: Math.max(before + 1, Date.now()),
    path: place.folder,
    clipsPath: state.clipsFolder,
    isDemo: isDemoFolder(place.folder),
    planVersion: state.planVersion,
    problems: state.problems,
    reading: state.reading,
    events: state.events,
    ...(place.second && { second: { who: place.second.who, of: place.second.of } }),
  });
  state.views = [...state.views.slice(1 - REMEMBERED_VIEWS), view];
  return view;
}

/** What leads a page with that revision to the newest view. */
export function buildUpdate(state: SessionState, since: number | null): LessonUpdate {
  const view = getView(state);
  const from = state.views.find(({ revision }) => revision === since);
  return from ? { kind: 'patch', patch: buildPatch(from, view) } : { kind: 'whole', view };
}

/** The ports of a session: a second marking reads and writes a journal of its own. */
export function openSessionPorts({ folder, second }: SessionPlace, clipsFolder: string): LessonPorts {
  const ports = openPorts(folder, clipsFolder);
  return second ? withSecondJournal(ports, folder, second.file) : ports;
}

/** Jobs carry their own signal; what ports without one do beside is short. */
export function openPorts(folder: string, clipsFolder: string, signal?: AbortSignal): LessonPorts {
  return openLessonPorts({ folder, clipsFolder, signal: signal ?? new AbortController().signal });
}
