import { mkdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { parseJournal } from '../../src-core/lesson-file/journal-file.ts';
import type { replayJournal } from '../../src-core/marking/replay.ts';
import { routemark } from './command-line.ts';

/** Runs a command that must come to an end with its work done; 1 says that something in it wants a look. */
async function run(args: readonly string[]): Promise<void> {
  const { code, stderr } = await routemark(args);
  if (code !== 0 && code !== 1) throw new Error(stderr);
}

/** The same decisions by the command line in a fresh copy of the lesson, and the sheet that it writes. */
export async function exportByCommandLine(folder: string, fresh: string): Promise<Buffer> {
  const journal = parseJournal(await readFile(path.join(folder, 'marks.jsonl'), 'utf8'));
  if (!journal.ok) throw new Error('the journal reads');
  const inForce = listInForce(journal.value);
  const out = path.join(fresh, 'by-hand');
  await mkdir(out);
  const list = path.join(out, 'decisions.jsonl');
  await writeFile(list, inForce.map((act) => `${JSON.stringify(act)}\n`).join(''));
  await run(['mark', fresh, '--list', list]);
  await run(['export', fresh, '--out', path.join(out, 'sheet.csv')]);
  return readFile(path.join(out, 'sheet.csv'));
}

type Events = Parameters<typeof replayJournal>[0];

/** Decisions that nobody has taken back, oldest first. */
function listInForce(events: Events) {
  const undone = new Set<string>();
  for (const { what } of events) {
    if (what.kind === 'undone') undone.add(what.target);
    if (what.kind === 'redone') undone.delete(what.target);
  }
  return events
    .filter(({ id, what }) => !undone.has(id) && !['undone', 'redone', 'handed-in'].includes(what.kind))
    .map(({ what }) => what);
}
