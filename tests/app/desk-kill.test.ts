import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { expect, test } from 'vitest';
import { parseJournal } from '../../src-core/lesson-file/journal-file.ts';
import { seededRandom } from '../../src-core/platform/seeded-random.ts';
import { writeSmallLesson } from '../contract/small-lesson.ts';
import { makeTemporaryFolder } from '../unit/host/temporary-folder.ts';
import { bundleProgram } from './bundle-program.ts';

/** Together with those of a window and its host in `window-kill.window.test.ts`: fifty. */
const KILLS = 30;

/** Lets a desk decide and kills it a while after its first acknowledgement. Gives what it has acknowledged. */
async function decideAndKill(args: readonly string[], afterMs: number): Promise<readonly string[]> {
  const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'inherit'] });
  let output = '';
  const ended = new Promise<string | number | null>((resolve) => {
    child.on('close', (code, signal) => resolve(signal ?? code));
  });
  const first = new Promise<void>((resolve) => {
    child.stdout.setEncoding('utf8').on('data', (text: string) => {
      output += text;
      resolve();
    });
  });
  await Promise.race([first, ended]);
  await sleep(afterMs);
  child.kill('SIGKILL');
  expect(await ended).toBe('SIGKILL');
  // What was cut off in naming was not named.
  return output.split('\n').slice(0, -1);
}

test(`${KILLS} kills of a desk in the middle of deciding lose no acknowledged decision`, async () => {
  const folder = makeTemporaryFolder();
  const lesson = path.join(folder, 'lesson');
  await writeSmallLesson(lesson);
  const desk = bundleProgram(new URL('./desk-writer.ts', import.meta.url));
  const random = seededRandom(41);
  const acknowledged: string[] = [];
  for (let killed = 0; killed < KILLS; killed += 1) {
    acknowledged.push(...(await decideAndKill([desk, lesson, path.join(folder, 'home')], random() * 40)));
  }
  const journal = parseJournal(readFileSync(path.join(lesson, 'marks.jsonl'), 'utf8'));
  if (!journal.ok) throw new Error('the journal can be read');
  const kept = new Set(journal.value.map(({ id }) => id));
  expect(acknowledged.filter((id) => !kept.has(id))).toEqual([]);
  expect(journal.problems.filter(({ code }) => code !== 'journal-line-torn')).toEqual([]);
  // The desks were killed while they decided, and each start took over where the last was cut off.
  expect(acknowledged.length).toBeGreaterThan(KILLS * 2);
});
