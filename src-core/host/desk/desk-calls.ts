import { existsSync } from 'node:fs';
import path from 'node:path';
import type { RecentLesson } from '../../contract/desk-view.ts';
import type { Handlers } from '../../contract/dispatch.ts';
import type { LessonUpdate } from '../../contract/lesson-update.ts';
import type { Problem } from '../../contract/problem.ts';
import { fail, type Outcome, succeed } from '../../platform/outcome.ts';
import { findFfmpeg } from '../find-ffmpeg.ts';
import { readKeptUntil } from '../keeping-files.ts';
import { getSchoolDay } from '../school-day.ts';
import type { DeskParts } from './desk-parts.ts';
import type { CallContext } from './face.ts';
import { listPlaces, lookInto } from './folder-tokens.ts';
import { findRealFolder, getLessonId, isLessonFolder } from './lesson-folder.ts';
import type { LessonSession } from './lesson-session.ts';
import { openSharedJob } from './shared-job.ts';

/** The calls about the desk itself: what it can do, folders, lessons known, the demo. */
export function buildDeskCalls(
  desk: DeskParts,
): Pick<
  Handlers<CallContext>,
  'readDesk' | 'chooseFolders' | 'listFolders' | 'openLesson' | 'openDemo' | 'forgetLesson'
> {
  const { options, tokens, lessons } = desk;
  const listRecent = () => Promise.all(desk.record.get().lessons.map(describeLesson));
  const demoFolder = path.join(options.home, 'demo-lesson');
  const film = openSharedJob((context) => options.filmDemo(demoFolder, context));
  const filmAnew = async (context: CallContext): Promise<Problem | null> => {
    const standing = await findRealFolder(demoFolder);
    if (standing !== null) lessons.close(getLessonId(standing));
    try {
      await film.join(context);
      return null;
    } catch (fault) {
      if (context.signal.aborted) throw fault;
      return { code: 'demo-failed', reason: fault instanceof Error ? fault.message : String(fault) };
    }
  };
  return {
    readDesk: async () =>
      succeed({
        face: options.face,
        version: options.version,
        hasFolderDialog: options.chooseFolders !== null,
        takesUploads: options.face === 'browser',
        hasFfmpeg: (await findFfmpeg()).ok,
        lessons: await listRecent(),
        openFirst: desk.getOpenFirst(),
      }),
    chooseFolders: async ({ purpose }) => {
      if (!options.chooseFolders) return fail({ code: 'no-folder-dialog' });
      return succeed({ folders: (await options.chooseFolders(purpose)).map(tokens.hand) });
    },
    listFolders: async ({ folder: token }) => {
      const recent = desk.record.get().lessons.map((lesson) => lesson.path);
      const places = await listPlaces(tokens, recent);
      if (token === null) return succeed(places);
      const folder = tokens.find(token);
      if (folder === null) return fail({ code: 'folder-unknown' });
      const begin = places.folders.map((place) => place.path);
      const look = await lookInto(tokens, folder, begin);
      return look ? succeed(look) : fail({ code: 'folder-unreadable', path: folder });
    },
    openLesson: async (input) => {
      if ('lesson' in input) return showLesson(await lessons.openKnown(input.lesson));
      const folder = tokens.find(input.folder);
      return folder === null
        ? fail({ code: 'folder-unknown' })
        : showLesson(await lessons.openFolder(folder));
    },
    openDemo: async (_, context) => {
      const failure = isLessonFolder(demoFolder) ? null : await filmAnew(context);
      return failure ? fail(failure) : showLesson(await lessons.openFolder(demoFolder));
    },
    forgetLesson: async ({ lesson }) => {
      lessons.close(lesson);
      await desk.record.change((record) => ({
        ...record,
        lessons: record.lessons.filter((one) => one.lesson !== lesson),
      }));
      return succeed({ lessons: await listRecent() });
    },
  };
}

type Shown = Outcome<{ update: LessonUpdate }, Problem>;

function showLesson(session: Outcome<LessonSession, Problem>): Shown {
  return session.ok ? succeed({ update: session.value.getUpdate(null) }, session.problems) : session;
}

async function describeLesson({
  clipsPath: _,
  ...known
}: Omit<RecentLesson, 'isThere' | 'dueSince'> & {
  readonly clipsPath: string | null;
}): Promise<RecentLesson> {
  // By this machine's day: the school's zone stands in each plan, which is not read for a list.
  const today = getSchoolDay(Intl.DateTimeFormat().resolvedOptions().timeZone, Date.now());
  const { until, isOverdue } = await readKeptUntil(known.path, today);
  const isThere = existsSync(path.join(known.path, 'plan.json'));
  return { ...known, isThere, dueSince: isThere && isOverdue ? until : null };
}
