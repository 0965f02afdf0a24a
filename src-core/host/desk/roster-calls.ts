import { createHash } from 'node:crypto';
import {
  type ClassListFiles,
  checkRosterText,
  draftRoster,
  type ImportOrder,
  type RosterDraft,
  withSquads,
} from '../../app/import-roster.ts';
import type { CallOutput, CheckedInput } from '../../contract/calls.ts';
import type { Handlers } from '../../contract/dispatch.ts';
import type { LessonUpdate } from '../../contract/lesson-update.ts';
import type { Problem } from '../../contract/problem.ts';
import { fail, type Outcome, succeed } from '../../platform/outcome.ts';
import { readClassListFiles } from '../class-list-files.ts';
import { saveRosterText } from '../plan-versions.ts';
import { type DeskParts, withLessonThere } from './desk-parts.ts';
import type { CallContext } from './face.ts';
import type { LessonSession } from './lesson-session.ts';

/** The calls that write roster.csv. */
export function buildRosterCalls(
  desk: DeskParts,
): Pick<Handlers<CallContext>, 'previewRoster' | 'mergeRoster' | 'saveSquads'> {
  return {
    previewRoster: (order) =>
      withLessonThere(desk, order.lesson, async (session) => {
        const drafted = await draft(desk, session, order);
        if (!drafted.ok) return drafted;
        const { source, merge, text, problems, roster } = drafted.value;
        return succeed({ source, merge, draft: getDraftId(roster, text) }, problems);
      }),
    mergeRoster: (order) =>
      withLessonThere(desk, order.lesson, (session) => session.inTurn(() => merge(desk, session, order))),
    saveSquads: (order) =>
      withLessonThere(desk, order.lesson, (session) => session.inTurn(() => saveSquads(session, order))),
  };
}

async function saveSquads(
  session: LessonSession,
  { since, assignment }: CheckedInput<'saveSquads'>,
): Promise<Outcome<CallOutput<'saveSquads'>, Problem>> {
  const roster = await session.getPorts().readText('roster.csv');
  if (!roster.ok) return roster;
  if (roster.value === null) return fail({ code: 'lesson-without-roster' });
  const slips = checkRosterText(roster.value);
  if (slips.length > 0) return fail<Problem>(...slips);
  const saved = await save(session, withSquads(roster.value, assignment), since);
  return saved.ok ? succeed({ update: saved.value }, saved.problems) : saved;
}

type ListOrder = Pick<CheckedInput<'previewRoster'>, 'from' | 'columns' | 'classId' | 'left'>;

/** A draft, and the roster that it was made on. */
type Drafted = RosterDraft & { readonly roster: string | null };

async function draft(
  desk: DeskParts,
  session: LessonSession,
  { from, columns, classId, left }: ListOrder,
): Promise<Outcome<Drafted, Problem>> {
  const place = desk.inboxes.find(from)?.folder ?? desk.tokens.find(from);
  if (place === null) return fail({ code: 'folder-unknown' });
  const list: Outcome<ClassListFiles, Problem> = await readClassListFiles(place);
  if (!list.ok) return list;
  const roster = await session.getPorts().readText('roster.csv');
  if (!roster.ok) return roster;
  const { plan } = session.getView();
  const order: ImportOrder = { plan, roster: roster.value, columns, classId, left };
  return succeed({ ...draftRoster(list.value, order), roster: roster.value });
}

async function merge(
  desk: DeskParts,
  session: LessonSession,
  order: CheckedInput<'mergeRoster'>,
): Promise<Outcome<CallOutput<'mergeRoster'>, Problem>> {
  const drafted = await draft(desk, session, order);
  if (!drafted.ok) return drafted;
  const { merge: changes, text, problems, roster } = drafted.value;
  if (changes === null || text === null) return fail<Problem>(...problems);
  if (getDraftId(roster, text) !== order.draft) return fail({ code: 'roster-changed' });
  const saved = await save(session, text, order.since);
  if (!saved.ok) return saved;
  await desk.inboxes.close(order.from);
  return succeed({ merge: changes, update: saved.value }, [...problems, ...saved.problems]);
}

async function save(
  session: LessonSession,
  text: string,
  since: number | null,
): Promise<Outcome<LessonUpdate, Problem>> {
  const written = await saveRosterText(session.folder, text);
  if (!written.ok) return written;
  const seen = await session.rereadFiles();
  return seen.ok ? succeed(session.getUpdate(since)) : seen;
}

/** Stands for the roster before and after. */
function getDraftId(before: string | null, after: string | null): string | null {
  if (after === null) return null;
  return createHash('sha256')
    .update(JSON.stringify([before, after]))
    .digest('hex')
    .slice(0, 32);
}
