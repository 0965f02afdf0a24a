import type { LessonId } from '../../contract/desk-view.ts';
import type { DeskEvent } from '../../contract/events.ts';
import type { Problem } from '../../contract/problem.ts';
import { fail, type Outcome, succeed } from '../../platform/outcome.ts';
import { type Claim, claim } from './claim.ts';
import type { DeskRecordFile } from './desk-record.ts';
import { findRealFolder, getLessonId, isDemoFolder } from './lesson-folder.ts';
import { type LessonSession, openSession } from './lesson-session.ts';
import { watchLesson } from './lesson-watch.ts';

/** The lessons that this desk holds open. */
export interface OpenLessons {
  /** Opens a lesson folder, or gives the session that is open already. */
  readonly openFolder: (folder: string) => Promise<Outcome<LessonSession, Problem>>;
  /** Opens a lesson by its id: open here, or known from before. */
  readonly openKnown: (lesson: LessonId) => Promise<Outcome<LessonSession, Problem>>;
  /** The open session; a lesson known from before is opened, so that a page outlives its host. */
  readonly find: (lesson: LessonId) => Promise<LessonSession | null>;
  readonly close: (lesson: LessonId) => void;
  readonly closeAll: () => void;
}

interface Held {
  readonly session: LessonSession;
  readonly claim: Claim;
  readonly unwatch: () => void;
}

/** What open lessons tell of. */
export interface LessonEars {
  readonly tell: (event: DeskEvent) => void;
  readonly onAsked: (lesson: LessonId) => void;
}

/** No lesson is open yet. */
export function openLessons(record: DeskRecordFile, ears: LessonEars): OpenLessons {
  const held = new Map<LessonId, Held>();
  const opening = new Map<LessonId, Promise<Outcome<LessonSession, Problem>>>();
  const openFolder = async (given: string): Promise<Outcome<LessonSession, Problem>> => {
    const folder = await findRealFolder(given);
    if (folder === null) return fail({ code: 'folder-missing', path: given, cause: 'ENOENT' });
    const lesson = getLessonId(folder);
    const open = held.get(lesson);
    if (open) return succeed(open.session);
    const underway = opening.get(lesson) ?? openOnce(lesson, folder);
    opening.set(lesson, underway);
    return underway.finally(() => opening.delete(lesson));
  };
  const openOnce = async (lesson: LessonId, folder: string): Promise<Outcome<LessonSession, Problem>> => {
    const claimed = await claim(`lesson ${lesson}`, 'show', () => {
      ears.onAsked(lesson);
      return 'shown';
    });
    if (!claimed.held) return fail({ code: 'lesson-open-elsewhere', lesson });
    const clipsFolder = record.get().lessons.find((one) => one.lesson === lesson)?.clipsPath ?? null;
    const onChange = (revision: number) => ears.tell({ kind: 'lesson-changed', lesson, revision });
    const session = await openSession({ lesson, folder, clipsFolder, onChange });
    if (!session.ok) {
      claimed.claim.release();
      return session;
    }
    const unwatch = watchLesson(folder, () => void session.value.refresh());
    held.set(lesson, { session: session.value, claim: claimed.claim, unwatch });
    await remember(record, session.value, clipsFolder);
    return session;
  };
  const openKnown = async (lesson: LessonId): Promise<Outcome<LessonSession, Problem>> => {
    const open = held.get(lesson);
    if (open) return succeed(open.session);
    const known = record.get().lessons.find((one) => one.lesson === lesson);
    return known ? openFolder(known.path) : fail({ code: 'lesson-unknown' });
  };
  const close = (lesson: LessonId) => {
    const open = held.get(lesson);
    held.delete(lesson);
    open?.unwatch();
    open?.claim.release();
  };
  return {
    openFolder,
    openKnown,
    find: async (lesson) => {
      const open = await openKnown(lesson);
      return open.ok ? open.value : null;
    },
    close,
    closeAll: () => {
      for (const lesson of [...held.keys()]) close(lesson);
    },
  };
}

async function remember(
  record: DeskRecordFile,
  session: LessonSession,
  clipsPath: string | null,
): Promise<void> {
  const { title, className, date } = session.getView().plan.lesson;
  const { lesson, folder } = session;
  const isDemo = isDemoFolder(folder);
  const entry = { lesson, path: folder, clipsPath, title, className, date, openedMs: Date.now(), isDemo };
  await record.change((now) => ({
    ...now,
    lessons: [entry, ...now.lessons.filter((one) => one.lesson !== lesson)],
  }));
}
