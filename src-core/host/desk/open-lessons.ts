import type { LessonId } from '../../contract/desk-view.ts';
import type { DeskEvent } from '../../contract/events.ts';
import type { Problem } from '../../contract/problem.ts';
import { fail, type Outcome, succeed } from '../../platform/outcome.ts';
import { findMarkerFile } from '../second-marks.ts';
import { type Claim, claim } from './claim.ts';
import type { DeskRecordFile } from './desk-record.ts';
import { findRealFolder, getLessonId, getSecondId, isDemoFolder } from './lesson-folder.ts';
import { type LessonSession, openSession } from './lesson-session.ts';
import { watchLesson } from './lesson-watch.ts';
import type { SessionPlace } from './session-state.ts';

/** The lessons that this desk holds open. */
export interface OpenLessons {
  /** Opens a lesson folder, or gives the session that is open already. */
  readonly openFolder: (folder: string) => Promise<Outcome<LessonSession, Problem>>;
  /** Opens a lesson, or a second marking of one, by its id: open here, or known from before. */
  readonly openKnown: (lesson: LessonId) => Promise<Outcome<LessonSession, Problem>>;
  /** Opens a second marking of an open lesson, blind to the first, in a journal of its own. */
  readonly openSecond: (first: LessonSession, who: string) => Promise<Outcome<LessonSession, Problem>>;
  /** The open session; a lesson known from before is opened, so that a page outlives its host. */
  readonly find: (lesson: LessonId) => Promise<LessonSession | null>;
  /** Every open session of one lesson folder: the lesson itself and its second markings. */
  readonly listMarkings: (lesson: LessonId) => readonly LessonSession[];
  readonly close: (lesson: LessonId) => void;
  readonly closeAll: () => void;
}

interface Held {
  readonly session: LessonSession;
  /** Null: held with the lesson that it is a second marking of. */
  readonly claim: Claim | null;
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
  const openOnce = buildOpenOnce(held);
  const openFolder = async (given: string): Promise<Outcome<LessonSession, Problem>> => {
    const folder = await findRealFolder(given);
    if (folder === null) return fail({ code: 'folder-missing', path: given, cause: 'ENOENT' });
    const lesson = getLessonId(folder);
    return openOnce(lesson, () => openClaimed(lesson, folder));
  };
  const openClaimed = async (lesson: LessonId, folder: string): Promise<Outcome<LessonSession, Problem>> => {
    const claimed = await claim(`lesson ${lesson}`, 'show', () => {
      ears.onAsked(lesson);
      return 'shown';
    });
    if (!claimed.held) return fail({ code: 'lesson-open-elsewhere', lesson });
    const clipsFolder = record.get().lessons.find((one) => one.lesson === lesson)?.clipsPath ?? null;
    const session = await hold({ held, ears }, { lesson, folder, clipsFolder, second: null }, claimed.claim);
    if (session.ok) await remember(record, session.value, clipsFolder);
    return session;
  };
  const openSecond = async (first: LessonSession, who: string): Promise<Outcome<LessonSession, Problem>> => {
    const place = findSecondPlace(first, who);
    if (place === null) return fail({ code: 'marker-name-bad' });
    // The lesson itself is held by this process: nobody else can have a second marking of it open.
    const opened = await openOnce(place.lesson, () => hold({ held, ears }, place, null));
    if (opened.ok) await rememberSecond(record, place);
    return opened;
  };
  const openKnown = async (lesson: LessonId): Promise<Outcome<LessonSession, Problem>> => {
    const open = held.get(lesson);
    if (open) return succeed(open.session);
    const { lessons, seconds } = record.get();
    const known = lessons.find((one) => one.lesson === lesson);
    if (known) return openFolder(known.path);
    const second = seconds.find((one) => one.lesson === lesson);
    if (!second) return fail({ code: 'lesson-unknown' });
    const first = await openKnown(second.of);
    return first.ok ? openSecond(first.value, second.who) : first;
  };
  const close = (lesson: LessonId) => {
    const open = held.get(lesson);
    held.delete(lesson);
    open?.unwatch();
    open?.claim?.release();
    for (const session of listMarkings(held, lesson)) close(session.lesson);
  };
  return {
    openFolder,
    openKnown,
    openSecond,
    find: async (lesson) => {
      const open = await openKnown(lesson);
      return open.ok ? open.value : null;
    },
    listMarkings: (lesson) => listMarkings(held, lesson),
    close,
    closeAll: () => {
      for (const lesson of [...held.keys()]) close(lesson);
    },
  };
}

type Opening = Promise<Outcome<LessonSession, Problem>>;

/** Gives the session that is held, and opens one session at a time: whoever comes meanwhile waits for that one. */
function buildOpenOnce(held: Holder['held']) {
  const opening = new Map<LessonId, Opening>();
  return async (lesson: LessonId, open: () => Opening): Promise<Outcome<LessonSession, Problem>> => {
    const here = held.get(lesson);
    if (here) return succeed(here.session);
    const underway = opening.get(lesson) ?? open();
    opening.set(lesson, underway);
    return underway.finally(() => opening.delete(lesson));
  };
}

/** Where a second marking is kept; null: the name makes no file. */
function findSecondPlace(first: LessonSession, who: string) {
  const file = findMarkerFile(who);
  if (file === null) return null;
  const { folder, lesson: of } = first;
  const lesson = getSecondId(folder, file);
  return { lesson, folder, clipsFolder: first.getClipsFolder(), second: { who, file, of } };
}

function listMarkings(held: Holder['held'], of: LessonId): readonly LessonSession[] {
  const sessions = [...held.values()].map(({ session }) => session);
  return sessions.filter(({ lesson, secondOf }) => lesson === of || secondOf === of);
}

interface Holder {
  readonly held: Map<LessonId, Held>;
  readonly ears: LessonEars;
}

/** Opens a session and holds it; a claim is given back where it cannot be opened. */
async function hold(
  { held, ears }: Holder,
  place: Omit<SessionPlace, 'onChange'>,
  claimed: Claim | null,
): Promise<Outcome<LessonSession, Problem>> {
  const { lesson, folder } = place;
  const onChange = (revision: number) => ears.tell({ kind: 'lesson-changed', lesson, revision });
  const session = await openSession({ ...place, onChange });
  if (!session.ok) {
    claimed?.release();
    return session;
  }
  const unwatch = watchLesson(folder, () => void session.value.refresh());
  held.set(lesson, { session: session.value, claim: claimed, unwatch });
  return session;
}

async function rememberSecond(
  record: DeskRecordFile,
  { lesson, second: { of, who } }: NonNullable<ReturnType<typeof findSecondPlace>>,
): Promise<void> {
  if (record.get().seconds.some((one) => one.lesson === lesson)) return;
  await record.change((now) => ({ ...now, seconds: [{ lesson, of, who }, ...now.seconds] }));
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
