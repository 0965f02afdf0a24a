import { existsSync } from 'node:fs';
import path from 'node:path';
import { buildHandInAct, type HandInCheck } from '../../app/export-sheet.ts';
import { draftPack } from '../../app/print-pack.ts';
import { draftPaper } from '../../app/print-sheet.ts';
import { recordEntries } from '../../app/record-entries.ts';
import type { CallOutput, CheckedInput } from '../../contract/calls.ts';
import type { Handlers } from '../../contract/dispatch.ts';
import type { Problem } from '../../contract/problem.ts';
import { fail, type Outcome, succeed } from '../../platform/outcome.ts';
import { getLessonNames } from '../lesson-names.ts';
import { printPack } from '../pdf/print-pack.ts';
import { printSheet } from '../pdf/print-sheet.ts';
import { type DeskParts, withLesson } from './desk-parts.ts';
import type { CallContext } from './face.ts';
import { isWithin } from './folder-tokens.ts';
import { isPlainPath } from './inbox.ts';
import { findRealFolder } from './lesson-folder.ts';
import type { LessonSession } from './lesson-session.ts';
import { isLessonsOwn } from './sheet-calls.ts';

/** The calls that draw on paper: the print pack, and the sheets about marked clips. */
export function buildPrintCalls(desk: DeskParts): Pick<Handlers<CallContext>, 'printPack' | 'printSheet'> {
  return {
    printSheet: (order, context) =>
      withLesson(desk, order.lesson, async (session) => {
        const { into } = order;
        const folder = into === null ? path.join(session.folder, 'hand-in') : desk.tokens.find(into);
        return folder === null
          ? fail({ code: 'folder-unknown' })
          : handInPaper(session, { ...order, folder }, context);
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
  // Nothing but clips is put among the clips, for what lies there is read as one.
  const clips = (await findRealFolder(session.getClipsFolder())) ?? session.getClipsFolder();
  if (isWithin(folder, clips)) return fail({ code: 'file-name-bad', path: folder });
  const { plan, pupils } = session.getView();
  return printPack(draftPack({ plan, pupils }, order), { folder, replace }, context);
}

async function handInPaper(
  session: LessonSession,
  { folder, fileName, replace, ...order }: CheckedInput<'printSheet'> & { readonly folder: string },
  context: CallContext,
): Promise<Outcome<CallOutput<'printSheet'>, Problem>> {
  if (session.getView().reading.state !== 'read') return fail({ code: 'clips-unread' });
  const file = path.join(folder, fileName);
  const isPlain = !fileName.includes('/') && isPlainPath(fileName);
  if (!isPlain || (await isLessonsOwn(session, file))) return fail({ code: 'file-name-bad', path: fileName });
  if (existsSync(file) && !replace) return fail({ code: 'file-exists', path: file });
  const graded = session.getGraded();
  const draft = draftPaper(graded, order, order);
  const stills = {
    findFile: session.findClipFile,
    readStrip: session.getPorts().readStrip,
  };
  const printed = await printSheet(draft, { file, stills, names: getLessonNames(graded) }, context);
  if (!printed.ok) return printed;
  const { check } = draft;
  const recorded = check
    ? await session.inTurn(() => recordHandIn(session, order.who, [fileName, check]))
    : [];
  return succeed<CallOutput<'printSheet'>, Problem>(
    { path: file, pageCount: printed.value.pageCount, update: session.getUpdate(order.since) },
    [...printed.problems, ...recorded],
  );
}

/** The sheet is written; that the journal does not say so is told beside it. */
async function recordHandIn(
  session: LessonSession,
  who: string,
  [fileName, check]: readonly [fileName: string, check: HandInCheck],
): Promise<readonly Problem[]> {
  const ports = session.getPorts();
  const act = buildHandInAct([fileName], check);
  const journal = await recordEntries(ports, [{ id: ports.newId(), act }], who);
  if (!journal.ok) return journal.problems;
  session.takeJournal(journal.value);
  return [];
}
