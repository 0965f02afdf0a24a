// A marking run to be killed: reads the journal given as its argument, then decides without end, naming each
// decision on standard output as soon as it is acknowledged.

import { writeSync } from 'node:fs';
import { monotonicFactory } from 'ulid';
import { openJournalStore } from '../../src-core/host/journal-store.ts';
import { buildJournalLine, JOURNAL_HEADER, parseJournal } from '../../src-core/lesson-file/journal-file.ts';
import { buildEvent } from '../../src-core/marking/build-event.ts';
import { type JournalState, replayJournal } from '../../src-core/marking/replay.ts';

const [file = '', who = 'teacher'] = process.argv.slice(2);
const store = openJournalStore(file, JOURNAL_HEADER);
const nextId = monotonicFactory();

/** The state of the journal as it stands on disk; ends the run with code 3 where it cannot be read. */
async function readState(): Promise<JournalState> {
  const text = await store.read();
  const events = text.ok ? parseJournal(text.value) : text;
  if (!events.ok) process.exit(3);
  return replayJournal(events.value);
}

let state = await readState();
for (let n = 0; ; n += 1) {
  const what = {
    kind: 'criterion-marked',
    clip: `clip-${n % 50}`,
    criterion: 'reps',
    met: n % 2 === 0,
  } as const;
  const event = buildEvent(state, what, { id: nextId(), nowMs: Date.now(), who });
  const outcome = await store.append([buildJournalLine(event)]);
  if (!outcome.ok) process.exit(4);
  writeSync(1, `${event.id}\n`);
  state = { ...state, lastAt: event.at };
}
