import type { MarkProblem } from '../contract/problem.ts';
import { buildJournalLine } from '../lesson-file/journal-file.ts';
import { buildEvent, findRedo, findUndo } from '../marking/build-event.ts';
import type { JournalAct, JournalEvent, JournalEventId } from '../marking/journal-event.ts';
import { type JournalState, replayJournal } from '../marking/replay.ts';
import { fail, type Outcome, succeed } from '../platform/outcome.ts';
import { type OpenJournal, openJournal } from './open-lesson.ts';
import type { LessonPorts } from './ports.ts';

/** One thing to record, under the id that whoever asks has given it. */
export interface JournalEntry {
  readonly id: JournalEventId;
  readonly act: JournalAct | 'undo' | 'redo';
}

/**
 * Records entries in the journal, all or none acknowledged; what is acknowledged is on the disk. An entry whose id
 * the journal has already was acknowledged before and lost its reply: it is passed over. The value is the journal
 * as it stands then.
 */
export async function recordEntries(
  ports: LessonPorts,
  entries: readonly JournalEntry[],
  who: string,
): Promise<Outcome<OpenJournal, MarkProblem>> {
  const journal = await openJournal(ports);
  if (!journal.ok) return journal;
  const { events } = journal.value;
  const known = new Set(events.map(({ id }) => id));
  const fresh: JournalEvent[] = [];
  let { state } = journal.value;
  for (const { id, act } of entries) {
    if (known.has(id)) continue;
    known.add(id);
    const event = buildOne(state, act, { id, nowMs: ports.nowMs(), who });
    if (!event) return fail({ code: act === 'redo' ? 'nothing-to-redo' : 'nothing-to-undo' });
    fresh.push(event);
    // Each event is built on the ones before it, for its instant and for what was decided before.
    state = replayJournal([...events, ...fresh]);
  }
  const written = await ports.appendToJournal(fresh.map(buildJournalLine));
  if (!written.ok) return written;
  // Somebody else decided at the same moment: their word counts too.
  if (written.value.length > 0) return openJournal(ports);
  return succeed<OpenJournal, MarkProblem>({ events: [...events, ...fresh], state }, journal.problems);
}

function buildOne(
  state: JournalState,
  act: JournalEntry['act'],
  stamp: { readonly id: JournalEventId; readonly nowMs: number; readonly who: string },
): JournalEvent | null {
  if (act === 'undo') return findUndo(state, stamp);
  return act === 'redo' ? findRedo(state, stamp) : buildEvent(state, act, stamp);
}
