import { createHash } from 'node:crypto';
import { ACCOUNT } from '../../../renderer/text/english/account.ts';
import { writeRecord } from '../../../renderer/text/english/pupil-record.ts';
import { withPupilWords } from '../../app/import-roster.ts';
import { findPupilRecord } from '../../app/pupil-record.ts';
import type { CallOutput, CheckedInput } from '../../contract/calls.ts';
import type { Handlers } from '../../contract/dispatch.ts';
import type { Problem } from '../../contract/problem.ts';
import { fail, type Outcome, succeed } from '../../platform/outcome.ts';
import { getLessonNames } from '../lesson-names.ts';
import { toPlainName } from '../plain-name.ts';
import { saveRosterText } from '../plan-versions.ts';
import { type DeskParts, withLesson } from './desk-parts.ts';
import type { CallContext } from './face.ts';
import type { LessonSession } from './lesson-session.ts';
import { findFilePlace, placeFile } from './place-file.ts';

/** The calls about what is noted of one pupil, and what is held on them. */
export function buildPupilCalls(
  desk: DeskParts,
): Pick<Handlers<CallContext>, 'noteConsent' | 'readPupilRecord' | 'writePupilRecord'> {
  return {
    noteConsent: (order) =>
      withLesson(desk, order.lesson, (session) => session.inTurn(() => noteConsent(session, order))),
    readPupilRecord: ({ lesson, pupil }) =>
      withLesson(desk, lesson, async (session) => {
        const record = buildRecord(session, pupil);
        return record ? succeed(record) : fail({ code: 'pupil-unknown', pupil });
      }),
    writePupilRecord: (order) =>
      withLesson(desk, order.lesson, async (session) => {
        const into = order.into === null ? null : desk.tokens.find(order.into);
        if (order.into !== null && into === null) return fail({ code: 'folder-unknown' });
        return writeRecordFile(session, { ...order, into });
      }),
  };
}

async function writeRecordFile(
  session: LessonSession,
  { pupil, draft, into, fileName, replace }: CheckedInput<'writePupilRecord'>,
): Promise<Outcome<CallOutput<'writePupilRecord'>, Problem>> {
  const record = buildRecord(session, pupil);
  if (!record) return fail({ code: 'pupil-unknown', pupil });
  if (record.draft !== draft) return fail({ code: 'sheet-changed' });
  const place = await findFilePlace(session, { into, ownFolder: 'records', fileName, replace });
  if (!place.ok) return place;
  const written = await placeFile(place.value, record.text);
  return written.ok ? succeed({ path: written.value }) : written;
}

function buildRecord(session: LessonSession, pupil: string): CallOutput<'readPupilRecord'> | null {
  const graded = session.getGraded();
  const record = findPupilRecord(graded, { pupil, events: session.getEvents(), words: ACCOUNT });
  if (!record) return null;
  const text = writeRecord(record, getLessonNames(graded));
  const draft = createHash('sha256').update(text).digest('hex').slice(0, 32);
  return { draft, text, keptIn: [...record.keptIn], fileName: `record ${toPlainName(pupil)}.md` };
}

async function noteConsent(
  session: LessonSession,
  { pupil, consent, stills, since }: CheckedInput<'noteConsent'>,
): Promise<Outcome<CallOutput<'noteConsent'>, Problem>> {
  const roster = await session.getPorts().readText('roster.csv');
  if (!roster.ok) return roster;
  if (roster.value === null) return fail({ code: 'lesson-without-roster' });
  const text = withPupilWords(roster.value, pupil, { consent, stills });
  if (text === null) return fail({ code: 'pupil-unknown', pupil });
  const written = await saveRosterText(session.folder, text);
  if (!written.ok) return written;
  const seen = await session.rereadFiles();
  return seen.ok ? succeed({ update: session.getUpdate(since) }) : seen;
}
