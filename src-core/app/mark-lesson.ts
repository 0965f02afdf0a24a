import type { MarkProblem } from '../contract/problem.ts';
import { buildJournalLine, parseJournal } from '../lesson-file/journal-file.ts';
import { readSchemaProblems } from '../lesson-file/schema-problem.ts';
import { buildEvent, findRedo, findUndo } from '../marking/build-event.ts';
import { type JournalAct, type JournalEvent, journalEventSchema } from '../marking/journal-event.ts';
import { replayJournal } from '../marking/replay.ts';
import { fail, type Outcome, succeed } from '../platform/outcome.ts';
import { type OpenJournal, openJournal } from './open-lesson.ts';
import type { LessonPorts } from './ports.ts';

/** What to record: decisions, or undo and redo of one. */
export type MarkOrder = readonly JournalAct[] | 'undo' | 'redo';

/**
 * Records decisions in the journal, all or none acknowledged; what is acknowledged is on the disk. The value is
 * the events as written. Fails with `decision-invalid` where one holds what no journal could be read back with.
 */
export async function markLesson(
  ports: LessonPorts,
  order: MarkOrder,
  who: string,
): Promise<Outcome<readonly JournalEvent[], MarkProblem>> {
  const journal = await openJournal(ports);
  if (!journal.ok) return journal;
  const events = buildEvents(ports, journal.value, { order, who });
  if (!events.ok) return events;
  const refused = events.value.flatMap(findInvalid);
  if (refused.length > 0) return fail(...refused);
  const written = await ports.appendToJournal(events.value.map(buildJournalLine));
  return written.ok ? succeed<readonly JournalEvent[], MarkProblem>(events.value, journal.problems) : written;
}

/**
 * Takes over the events of another journal of the same lesson, by event id; merging again adds nothing. The value
 * is the events that were new here.
 */
export async function mergeIntoLesson(
  ports: LessonPorts,
  otherText: string,
): Promise<Outcome<readonly JournalEvent[], MarkProblem>> {
  const journal = await openJournal(ports);
  if (!journal.ok) return journal;
  const other = parseJournal(otherText);
  if (!other.ok) return other;
  const known = new Set(journal.value.events.map(({ id }) => id));
  const fresh = other.value.filter(({ id }) => !known.has(id));
  const written = await ports.appendToJournal(fresh.map(buildJournalLine));
  return written.ok ? succeed<readonly JournalEvent[], MarkProblem>(fresh, other.problems) : written;
}

function buildEvents(
  ports: LessonPorts,
  journal: OpenJournal,
  { order, who }: { readonly order: MarkOrder; readonly who: string },
): Outcome<readonly JournalEvent[], MarkProblem> {
  const { state } = journal;
  const stamp = () => ({ id: ports.newId(), nowMs: ports.nowMs(), who });
  if (order === 'undo') {
    const event = findUndo(state, stamp());
    return event ? succeed([event]) : fail({ code: 'nothing-to-undo' });
  }
  if (order === 'redo') {
    const event = findRedo(state, stamp());
    return event ? succeed([event]) : fail({ code: 'nothing-to-redo' });
  }
  const events: JournalEvent[] = [];
  // Each event is built on the ones before it, for its instant and for what was decided before.
  for (const act of order) {
    const soFar = events.length === 0 ? state : replayJournal([...journal.events, ...events]);
    events.push(buildEvent(soFar, act, stamp()));
  }
  return succeed(events);
}

function findInvalid(event: JournalEvent): readonly MarkProblem[] {
  const parsed = journalEventSchema.safeParse(event);
  return parsed.success
    ? []
    : readSchemaProblems(parsed.error, event).map((problem) => ({ code: 'decision-invalid', ...problem }));
}
