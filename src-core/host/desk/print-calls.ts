import path from 'node:path';
import { draftPack } from '../../app/print-pack.ts';
import { draftPaper } from '../../app/print-sheet.ts';
import type { CallOutput, CheckedInput } from '../../contract/calls.ts';
import type { Handlers } from '../../contract/dispatch.ts';
import type { Problem } from '../../contract/problem.ts';
import { fail, type Outcome, succeed } from '../../platform/outcome.ts';
import { getLessonNames } from '../lesson-names.ts';
import { isLessonsOwn } from '../lesson-own-places.ts';
import { type DeskParts, withLesson } from './desk-parts.ts';
import type { CallContext } from './face.ts';
import type { LessonSession } from './lesson-session.ts';
import { findFilePlace } from './place-file.ts';
import { recordHandIn } from './record-hand-in.ts';

/** The calls that draw on paper: the print pack, and the sheets about marked clips. */
export function buildPrintCalls(desk: DeskParts): Pick<Handlers<CallContext>, 'printPack' | 'printSheet'> {
  return {
    printSheet: (order, context) =>
      withLesson(desk, order.lesson, async (session) => {
        const into = order.into === null ? null : desk.tokens.find(order.into);
        if (order.into !== null && into === null) return fail({ code: 'folder-unknown' });
        return handInPaper(session, { ...order, into }, context);
      }),
    printPack: (order, context) =>
      withLesson(desk, order.lesson, (session) => {
        const { into } = order;
        const folder = into === null ? path.join(session.folder, 'print') : desk.tokens.find(into);
        return print(session, { ...order, folder }, context);
      }),
  };
}

async function print(
  session: LessonSession,
  { folder, replace, ...order }: CheckedInput<'printPack'> & { readonly folder: string | null },
  context: CallContext,
): Promise<Outcome<CallOutput<'printPack'>, Problem>> {
  if (folder === null) return fail({ code: 'folder-unknown' });
  const lesson = { folder: session.folder, clipsFolder: session.getClipsFolder() };
  if (await isLessonsOwn(lesson, path.join(folder, 'any.pdf')))
    return fail({ code: 'file-name-bad', path: folder });
  const { plan, pupils } = session.getView();
  // Loaded when something is to be drawn: fonts and paper take as long to load as all else of a desk.
  const { printPack } = await import('../pdf/print-pack.ts');
  return printPack(
    draftPack({ plan, pupils }, order),
    { lessonFolder: session.folder, folder, replace },
    context,
  );
}

async function handInPaper(
  session: LessonSession,
  { into, fileName, replace, ...order }: CheckedInput<'printSheet'>,
  context: CallContext,
): Promise<Outcome<CallOutput<'printSheet'>, Problem>> {
  if (session.getView().reading.state !== 'read') return fail({ code: 'clips-unread' });
  const place = await findFilePlace(session, { into, ownFolder: 'hand-in', fileName, replace });
  if (!place.ok) return place;
  const file = place.value;
  const graded = session.getGraded();
  const draft = draftPaper(graded, order, order);
  const stills = {
    findFile: session.findClipFile,
    readStrip: session.getPorts().readStrip,
  };
  const { printSheet } = await import('../pdf/print-sheet.ts');
  const printed = await printSheet(draft, { file, stills, names: getLessonNames(graded) }, context);
  if (!printed.ok) return printed;
  const { check } = draft;
  const recorded = check
    ? await session.inTurn(() => recordHandIn(session, order.who, { fileName, check }))
    : [];
  return succeed<CallOutput<'printSheet'>, Problem>(
    { path: file, pageCount: printed.value.pageCount, update: session.getUpdate(order.since) },
    [...printed.problems, ...recorded],
  );
}
