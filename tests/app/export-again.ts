import { execFile } from 'node:child_process';
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { parseJournal } from '../../src-core/lesson-file/journal-file.ts';
import type { replayJournal } from '../../src-core/marking/replay.ts';

const MAIN = fileURLToPath(new URL('../../src-core/cli/main.ts', import.meta.url));

const run = (args: readonly string[]) =>
  promisify(execFile)(process.execPath, ['--import', 'tsx', MAIN, ...args]).catch(
    (error: { code?: number; stderr?: string; stdout?: string }) => {
      // 1: done, with something to look at.
      if (error.code !== 1) throw error;
      return { stdout: error.stdout ?? '', stderr: error.stderr ?? '' };
    },
  );

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
