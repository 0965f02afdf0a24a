import { existsSync } from 'node:fs';
import { rm } from 'node:fs/promises';
import path from 'node:path';
import { buildKeepingText } from '../../app/retention.ts';
import type { CallOutput, CheckedInput } from '../../contract/calls.ts';
import type { Handlers } from '../../contract/dispatch.ts';
import type { Problem } from '../../contract/problem.ts';
import { fail, type Outcome, succeed } from '../../platform/outcome.ts';
import { writeFileAtomically } from '../atomic-write.ts';
import { compareTablet } from '../compare-tablet.ts';
import { KEEPING_FILE, readDeletionLog, readKeptUntil } from '../keeping-files.ts';
import { deleteHoldings, listHoldings } from '../lesson-holdings.ts';
import { gatherSummaries, refreshSummaries } from '../look-back/gather-summaries.ts';
import { getSchoolDay } from '../school-day.ts';
import { describeWriteError } from '../write-error.ts';
import { type DeskParts, withLesson } from './desk-parts.ts';
import type { CallContext } from './face.ts';
import type { LessonSession } from './lesson-session.ts';

type KeepingNames = 'readKeeping' | 'keepUntil' | 'readHoldings' | 'deleteHoldings' | 'compareTablet';

/** The calls about how long a lesson is kept, and about letting it go. */
export function buildKeepingCalls(desk: DeskParts): Pick<Handlers<CallContext>, KeepingNames> {
  return {
    readKeeping: ({ lesson }) => withLesson(desk, lesson, (session) => describe(desk, session)),
    keepUntil: ({ lesson, until }) =>
      withLesson(desk, lesson, async (session) => {
        const written = await session.inTurn(() => keepUntil(session, until));
        return written.ok ? describe(desk, session) : written;
      }),
    readHoldings: ({ lesson, scope }, job) =>
      withLesson(desk, lesson, async (session) => {
        if (isBusy(desk, session)) return fail({ code: 'lesson-busy' });
        // What cannot be graded any more without its films is added up before they go, and before they are listed.
        const place = { folder: session.folder, clipsFolder: session.getClipsFolder() };
        const kept = scope === 'films' ? await refreshSummaries(await gatherSummaries([place]), job) : null;
        const holdings = await listHoldings(session.folder, scope);
        return succeed<CallOutput<'readHoldings'>, Problem>({ holdings }, kept?.problems ?? []);
      }),
    deleteHoldings: (order) =>
      withLesson(desk, order.lesson, (session) => session.inTurn(() => letGo(desk, session, order))),
    compareTablet: ({ lesson, folder: token }, { signal, onProgress }) =>
      withLesson(desk, lesson, async (session) => {
        const folder = desk.tokens.find(token);
        if (folder === null) return fail({ code: 'folder-unknown' });
        const onFile = (done: number, total: number) => onProgress({ step: 'compare', done, total });
        const found = await compareTablet(folder, session.getClipsFolder(), { signal, onFile });
        const { problems, ...tablet } = found;
        return succeed<CallOutput<'compareTablet'>, Problem>({ tablet }, problems);
      }),
  };
}

/** Reading and watching leave files behind as they go: a list would not hold. */
function isBusy({ lessons }: DeskParts, { lesson }: LessonSession): boolean {
  return lessons
    .listMarkings(lesson)
    .some(({ readClips, watching }) => readClips.isRunning() || watching.isRunning());
}

async function describe(
  { record }: DeskParts,
  session: LessonSession,
): Promise<Outcome<CallOutput<'readKeeping'>, Problem>> {
  const { zone } = session.getView().plan;
  const today = getSchoolDay(zone, session.getPorts().nowMs());
  const own = await readKeptUntil(session.folder, today);
  const known = record.get().lessons.filter(({ lesson, path: folder }) => {
    return lesson !== session.lesson && existsSync(path.join(folder, 'plan.json'));
  });
  const others = await Promise.all(
    known.map(async ({ lesson, title, className, date, path: folder }) => {
      const { until, isOverdue } = await readKeptUntil(folder, today);
      return { lesson, title, className, date, until, isOverdue };
    }),
  );
  const clips = session.getClipsFolder();
  const deletions = await readDeletionLog(session.folder);
  const clipsElsewhere = clips === path.join(session.folder, 'clips') ? null : clips;
  return succeed({ keeping: { ...own, today, others, deletions, clipsElsewhere } });
}

async function keepUntil({ folder }: LessonSession, until: string | null): Promise<Outcome<null, Problem>> {
  const file = path.join(folder, KEEPING_FILE);
  const text = until === null ? null : buildKeepingText(until);
  if (text !== null) {
    const written = await writeFileAtomically(file, text);
    return written.ok ? succeed(null) : written;
  }
  try {
    await rm(file, { force: true });
    return succeed(null);
  } catch (error) {
    return fail(describeWriteError(error, file));
  }
}

async function letGo(
  desk: DeskParts,
  session: LessonSession,
  { scope, code, who, lesson }: CheckedInput<'deleteHoldings'>,
): Promise<Outcome<CallOutput<'deleteHoldings'>, Problem>> {
  if (isBusy(desk, session)) return fail({ code: 'lesson-busy' });
  const { folder } = session;
  const holdings = await listHoldings(folder, scope);
  if (holdings.code !== code) return fail({ code: 'holdings-changed' });
  const stamp = { who, at: new Date(session.getPorts().nowMs()).toISOString() };
  const { files, bytes, problems } = await deleteHoldings(folder, { scope, holdings, stamp });
  // With anything left the lesson stays open, to be deleted from here again.
  const isGone = scope === 'all' && problems.length === 0;
  if (isGone) {
    desk.lessons.close(lesson);
    await desk.record.change((record) => ({
      ...record,
      lessons: record.lessons.filter((one) => one.lesson !== lesson),
    }));
  } else for (const marking of desk.lessons.listMarkings(lesson)) marking.forgetClips();
  return succeed<CallOutput<'deleteHoldings'>, Problem>({ files, bytes, isGone }, problems);
}
