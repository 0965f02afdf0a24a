import { createHash } from 'node:crypto';
import { existsSync } from 'node:fs';
import { mkdir } from 'node:fs/promises';
import path from 'node:path';
import { buildHandInAct, draftSheet, type SheetDraft } from '../../app/export-sheet.ts';
import { recordEntries } from '../../app/record-entries.ts';
import type { CallOutput, CheckedInput } from '../../contract/calls.ts';
import type { Handlers } from '../../contract/dispatch.ts';
import type { Problem } from '../../contract/problem.ts';
import { fail, type Outcome, succeed } from '../../platform/outcome.ts';
import { writeFileAtomically } from '../atomic-write.ts';
import { describeWriteError } from '../write-error.ts';
import { type DeskParts, withLessonThere } from './desk-parts.ts';
import type { CallContext } from './face.ts';
import { isWithin } from './folder-tokens.ts';
import { isPlainPath } from './inbox.ts';
import { findRealFolder } from './lesson-folder.ts';
import type { LessonSession } from './lesson-session.ts';

/** The calls that hand in. */
export function buildSheetCalls(
  desk: DeskParts,
): Pick<Handlers<CallContext>, 'draftSheet' | 'writeSheet' | 'readMappings' | 'saveMapping'> {
  return {
    draftSheet: ({ lesson, ...order }) =>
      withLessonThere(desk, lesson, async (session) => {
        if (session.getView().reading.state !== 'read') return fail({ code: 'clips-unread' });
        const { text, sheet, check, problems } = draftSheet(session.getGraded(), order);
        return succeed({
          draft: getDraftId(text),
          text,
          sheet,
          check,
          problems: [...problems],
          fileName: suggestFileName(session),
        });
      }),
    writeSheet: (order) =>
      withLessonThere(desk, order.lesson, async (session) => {
        const chosen = order.into === null ? null : desk.tokens.find(order.into);
        if (order.into !== null && chosen === null) return fail({ code: 'folder-unknown' });
        return session.inTurn(() => write(session, order, chosen));
      }),
    readMappings: async () => succeed({ mappings: desk.record.get().mappings }),
    saveMapping: async ({ name, columns }) => {
      await desk.record.change((record) => {
        const others = record.mappings.filter((mapping) => mapping.name !== name);
        return { ...record, mappings: columns ? [{ name, columns }, ...others] : others };
      });
      return succeed({ mappings: desk.record.get().mappings });
    },
  };
}

/** Stands for the sheet's very bytes. */
function getDraftId(text: string | null): string | null {
  return text === null ? null : createHash('sha256').update(text).digest('hex').slice(0, 32);
}

function suggestFileName(session: LessonSession): string {
  const { code, className, date } = session.getView().plan.lesson;
  const plain = (text: string) =>
    text
      .normalize('NFC')
      .replace(/[^\p{L}\p{N}-]+/gu, '-')
      .replace(/^-+|-+$/g, '');
  return `${[date, plain(code), plain(className)].filter((part) => part !== '').join(' ')}.csv`;
}

type Order = CheckedInput<'writeSheet'>;
type Written = Outcome<CallOutput<'writeSheet'>, Problem>;

async function write(session: LessonSession, order: Order, chosen: string | null): Promise<Written> {
  if (session.getView().reading.state !== 'read') return fail({ code: 'clips-unread' });
  const { fileName, columns, evenWithOpenFlags } = order;
  if (fileName.includes('/') || !isPlainPath(fileName))
    return fail({ code: 'file-name-bad', path: fileName });
  const draft = draftSheet(session.getGraded(), { columns, evenWithOpenFlags });
  if (draft.text === null) return fail(...draft.problems);
  if (getDraftId(draft.text) !== order.draft) return fail({ code: 'sheet-changed' });
  const folder = chosen ?? path.join(session.folder, 'hand-in');
  const file = path.join(folder, fileName);
  if (await isLessonsOwn(session, file)) return fail({ code: 'file-name-bad', path: fileName });
  if (existsSync(file) && !order.replace) return fail({ code: 'file-exists', path: file });
  try {
    if (chosen === null) await mkdir(folder, { recursive: true });
  } catch (error) {
    return fail(describeWriteError(error, folder));
  }
  const written = await writeFileAtomically(file, draft.text);
  if (!written.ok) return written;
  return recordHandIn(session, order, { file, draft });
}

/** What the lesson is made of is never written over by a sheet, and none is put among the clips. */
async function isLessonsOwn({ folder, getClipsFolder }: LessonSession, file: string): Promise<boolean> {
  const home = (await findRealFolder(path.dirname(file))) ?? path.dirname(file);
  const clips = (await findRealFolder(getClipsFolder())) ?? getClipsFolder();
  return (home === folder && OWN_FILES.includes(path.basename(file).toLowerCase())) || isWithin(home, clips);
}

const OWN_FILES: readonly string[] = ['plan.json', 'roster.csv', 'marks.jsonl'];

async function recordHandIn(
  session: LessonSession,
  { who, since }: Order,
  { file, draft }: { readonly file: string; readonly draft: SheetDraft },
): Promise<Written> {
  const act = buildHandInAct([path.basename(file)], draft.check);
  const journal = await recordEntries(session.getPorts(), [{ id: session.getPorts().newId(), act }], who);
  // The sheet is written; that the journal does not say so is told beside it.
  if (!journal.ok) return succeed({ path: file, update: session.getUpdate(since) }, journal.problems);
  session.takeJournal(journal.value);
  return succeed({ path: file, update: session.getUpdate(since) }, draft.problems);
}
