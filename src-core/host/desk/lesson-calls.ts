import { findMeaninglessPart } from '../../app/check-act.ts';
import { buildPlanText, checkEditedPlan, readEditedPlan, readPlanShape } from '../../app/edit-plan.ts';
import { type JournalEntry, recordEntries } from '../../app/record-entries.ts';
import { isSecondAct } from '../../app/second-marking.ts';
import type { LessonId } from '../../contract/desk-view.ts';
import type { Handlers } from '../../contract/dispatch.ts';
import type { LessonUpdate } from '../../contract/lesson-update.ts';
import type { Problem } from '../../contract/problem.ts';
import type { LessonProblem } from '../../lesson/lesson-problem.ts';
import { fail, type Outcome, succeed } from '../../platform/outcome.ts';
import type { PrintProblem } from '../../printing/print-problem.ts';
import { findMissingPhotos } from '../find-missing-photos.ts';
import { savePlanText } from '../plan-versions.ts';
import { type DeskParts, withLesson, withMarking, withSession } from './desk-parts.ts';
import type { CallContext } from './face.ts';
import { type LessonSession, readPlanVersion } from './lesson-session.ts';

type Updated = Outcome<{ update: LessonUpdate }, Problem>;

/** The calls about an open lesson: its state, decisions, plan. */
export function buildLessonCalls(
  desk: DeskParts,
): Pick<
  Handlers<CallContext>,
  'readLesson' | 'readClips' | 'setClipsFolder' | 'decide' | 'undo' | 'redo' | 'checkPlan' | 'savePlan'
> {
  return {
    readLesson: ({ lesson, since }) =>
      withSession(desk, lesson, async (session) => succeed({ update: session.getUpdate(since) })),
    readClips: ({ lesson, since }, context) =>
      withMarking(desk, lesson, async (session) => {
        await session.readClips.join(context);
        return succeed({ update: session.getUpdate(since) });
      }),
    setClipsFolder: ({ lesson, since, folder: token }) =>
      withLesson(desk, lesson, async (session) => {
        const folder = token === null ? null : desk.tokens.find(token);
        if (token !== null && folder === null) return fail({ code: 'folder-unknown' });
        session.setClipsFolder(folder);
        await desk.record.change((record) => ({
          ...record,
          lessons: record.lessons.map((one) => (one.lesson === lesson ? { ...one, clipsPath: folder } : one)),
        }));
        return succeed({ update: session.getUpdate(since) });
      }),
    decide: ({ lesson, since, who, entries }) =>
      withMarking(desk, lesson, async (session) => {
        if (session.secondOf !== null && !entries.every(({ act }) => isSecondAct(act)))
          return fail({ code: 'second-marking-only' });
        const { plan, pupils } = session.getView();
        const meaningless = entries
          .map(({ act }) => findMeaninglessPart(act, plan, pupils))
          .find((part) => part !== null);
        if (meaningless) return fail({ code: 'decision-meaningless', path: meaningless });
        const recorded = await record(session, { entries, who, since });
        if (!recorded.ok) return recorded;
        const acknowledged = entries.map(({ id }) => id);
        return succeed({ acknowledged, ...recorded.value }, recorded.problems);
      }),
    undo: ({ lesson, since, who, id }) =>
      withMarking(desk, lesson, (session) => record(session, { entries: [{ id, act: 'undo' }], who, since })),
    redo: ({ lesson, since, who, id }) =>
      withMarking(desk, lesson, (session) => record(session, { entries: [{ id, act: 'redo' }], who, since })),
    checkPlan: ({ lesson, plan }) => checkWithPhotos(desk, lesson, plan),
    savePlan: ({ lesson, since, base, plan }) =>
      withLesson(desk, lesson, (session) => savePlan(session, { since, base, plan })),
  };
}

async function checkWithPhotos(
  { lessons }: DeskParts,
  lesson: LessonId | undefined,
  plan: unknown,
): Promise<Outcome<{ problems: readonly (LessonProblem | PrintProblem)[] }, Problem>> {
  const shape = readPlanShape(plan);
  const session = lesson === undefined ? null : await lessons.find(lesson);
  const photos = shape.ok && session ? await findMissingPhotos(shape.value, session.folder) : [];
  return succeed({ problems: [...checkEditedPlan(plan), ...photos] });
}

interface RecordOrder {
  readonly entries: readonly JournalEntry[];
  readonly who: string;
  readonly since: number | null;
}

function record(session: LessonSession, { entries, who, since }: RecordOrder): Promise<Updated> {
  // One at a time: each entry is built on the journal as the one before left it.
  return session.inTurn(async () => {
    const journal = await recordEntries(session.getPorts(), entries, who);
    if (!journal.ok) return journal;
    session.takeJournal(journal.value);
    return succeed<{ update: LessonUpdate }, Problem>({ update: session.getUpdate(since) }, journal.problems);
  });
}

async function savePlan(
  session: LessonSession,
  { since, base, plan }: { readonly since: number | null; readonly base: string; readonly plan?: unknown },
): Promise<Updated> {
  const edited = readEditedPlan(plan);
  if (!edited.ok) return edited;
  return session.inTurn(async () => {
    if ((await readPlanVersion(session.folder)) !== base) return fail({ code: 'plan-changed-elsewhere' });
    const written = await savePlanText(session.folder, buildPlanText(edited.value));
    if (!written.ok) return written;
    const seen = await session.rereadFiles();
    if (!seen.ok) return seen;
    return succeed<{ update: LessonUpdate }, Problem>({ update: session.getUpdate(since) }, edited.problems);
  });
}
