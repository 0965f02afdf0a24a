import { existsSync } from 'node:fs';
import { nameSlip, wordSlip } from '../../../renderer/text/english/slips.ts';
import { draftSlips } from '../../app/draft-slips.ts';
import type { CallOutput, CheckedInput } from '../../contract/calls.ts';
import type { Handlers } from '../../contract/dispatch.ts';
import type { Problem } from '../../contract/problem.ts';
import { fail, type Outcome, succeed } from '../../platform/outcome.ts';
import { toPlainName } from '../plain-name.ts';
import { getSchoolDay } from '../school-day.ts';
import { type DeskParts, withLesson } from './desk-parts.ts';
import { draftHandIn, HAND_IN_ENDINGS, type HandInDraft, type HandInOrder } from './draft-hand-in.ts';
import type { CallContext } from './face.ts';
import type { LessonSession } from './lesson-session.ts';
import { findFilePlace, placeFile } from './place-file.ts';
import { recordHandIn } from './record-hand-in.ts';

/** The calls that hand in. */
export function buildHandInCalls(
  desk: DeskParts,
): Pick<
  Handlers<CallContext>,
  'draftHandIn' | 'writeHandIn' | 'readSlips' | 'readHandInMemory' | 'saveMapping'
> {
  return {
    draftHandIn: ({ lesson, ...order }) =>
      withLesson(desk, lesson, async (session) => {
        if (session.getView().reading.state !== 'read') return fail({ code: 'clips-unread' });
        const { content, preview, check, problems } = await draft(desk, session, order);
        const fileName = `${suggestName(session)}${HAND_IN_ENDINGS[order.what.kind]}`;
        return succeed({ draft: content?.id ?? null, preview, check, problems, fileName });
      }),
    writeHandIn: (order) =>
      withLesson(desk, order.lesson, async (session) => {
        const chosen = order.into === null ? null : desk.tokens.find(order.into);
        if (order.into !== null && chosen === null) return fail({ code: 'folder-unknown' });
        const written = await session.inTurn(() => write(desk, session, { ...order, chosen }));
        if (written.ok) await remember(desk, order, chosen);
        return written;
      }),
    readSlips: ({ lesson, of }) =>
      withLesson(desk, lesson, async (session) => {
        if (session.getView().reading.state !== 'read') return fail({ code: 'clips-unread' });
        const { plan } = session.getView();
        const slips = draftSlips(session.getGraded(), of);
        return succeed({
          slips: slips.map((slip) => ({ name: nameSlip(plan, slip), ...wordSlip(plan, slip) })),
        });
      }),
    readHandInMemory: async () => succeed(readMemory(desk)),
    saveMapping: async ({ name, columns }) => {
      await desk.record.change((record) => {
        const others = record.mappings.filter((mapping) => mapping.name !== name);
        return { ...record, mappings: columns ? [{ name, columns }, ...others] : others };
      });
      return succeed(readMemory(desk));
    },
  };
}

function readMemory({ record, tokens }: DeskParts): CallOutput<'readHandInMemory'> {
  const { mappings, lastFolder, schoolSet } = record.get();
  const hand = (place: string | null) => (place !== null && existsSync(place) ? tokens.hand(place) : null);
  return { mappings, lastFolder: hand(lastFolder), schoolSet: hand(schoolSet) };
}

async function remember(
  { record, tokens }: DeskParts,
  { what }: HandInOrder,
  chosen: string | null,
): Promise<void> {
  const school = what.kind === 'oneroster' && what.school !== null ? tokens.find(what.school) : null;
  if (chosen === null && school === null) return;
  await record.change((now) => ({
    ...now,
    lastFolder: chosen ?? now.lastFolder,
    schoolSet: school ?? now.schoolSet,
  }));
}

function draft(desk: DeskParts, session: LessonSession, order: HandInOrder): Promise<HandInDraft> {
  const { what } = order;
  const school = what.kind === 'oneroster' ? what.school : null;
  return draftHandIn(
    {
      graded: session.getGraded(),
      today: getSchoolDay(session.getView().plan.zone, session.getPorts().nowMs()),
      schoolPlace: school && (desk.inboxes.find(school)?.folder ?? desk.tokens.find(school)),
    },
    order,
  );
}

function suggestName(session: LessonSession): string {
  const { code, className, date } = session.getView().plan.lesson;
  return [date, toPlainName(code), toPlainName(className)].filter((part) => part !== '').join(' ');
}

type Order = CheckedInput<'writeHandIn'> & { readonly chosen: string | null };
type Written = Outcome<CallOutput<'writeHandIn'>, Problem>;

async function write(desk: DeskParts, session: LessonSession, order: Order): Promise<Written> {
  if (session.getView().reading.state !== 'read') return fail({ code: 'clips-unread' });
  const { fileName, what, evenWithOpenFlags, chosen: into, replace } = order;
  // A workbook or an archive of another name would not be known for what it is; a sheet of text is read anywhere.
  if (what.kind !== 'csv' && !fileName.endsWith(HAND_IN_ENDINGS[what.kind]))
    return fail({ code: 'file-name-bad', path: fileName });
  const place = await findFilePlace(session, { into, ownFolder: 'hand-in', fileName, replace });
  if (!place.ok) return place;
  const { content, check, problems } = await draft(desk, session, { what, evenWithOpenFlags });
  if (content === null) return fail(...problems);
  if (content.id !== order.draft) return fail({ code: 'sheet-changed' });
  const written = await placeFile(place.value, await content.build());
  if (!written.ok) return written;
  const recorded = await recordHandIn(session, order.who, { fileName, check });
  return succeed<CallOutput<'writeHandIn'>, Problem>(
    { path: written.value, update: session.getUpdate(order.since) },
    [...problems, ...recorded],
  );
}
