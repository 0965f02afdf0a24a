import { type ChildProcess, spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { expect, test } from 'vitest';
import { parseJournal } from '../../src-core/lesson-file/journal-file.ts';
import { type Random, seededRandom } from '../../src-core/platform/seeded-random.ts';
import { makeTemporaryFolder } from '../unit/host/temporary-folder.ts';
import { bundleProgram } from './bundle-program.ts';

// A kill shows what the program acknowledges too early and what it leaves half-written. It does not show what a
// power cut would: the system's own memory of the file survives a kill, so the sync itself is not proven here.

const KILLS = 200;

/** Kills of one journal before a new one is begun, so that starting does not grow slow with its length. */
const KILLS_EACH = 20;

/** Two runs at once at one journal, as the window and the command line may be. */
const WRITERS = 2;

interface Run {
  /** Ids that the run has named as acknowledged, in order. */
  readonly acknowledged: readonly string[];
  /** `SIGKILL` where it was still deciding; an exit code where it ended by itself, which it should not. */
  readonly end: string | number | null;
}

/** Starts a run and kills it: `beforeFirst` ms after its start, or `afterFirst` ms after its first acknowledgement. */
async function runAndKill(
  args: readonly string[],
  moment: { readonly beforeFirst: number } | { readonly afterFirst: number },
): Promise<Run> {
  const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'inherit'] });
  let output = '';
  const firstLine = new Promise<void>((resolve) => {
    child.stdout.setEncoding('utf8').on('data', (text: string) => {
      output += text;
      resolve();
    });
  });
  const ended = waitForEnd(child);
  if ('afterFirst' in moment) await Promise.race([firstLine, ended]);
  await sleep('afterFirst' in moment ? moment.afterFirst : moment.beforeFirst);
  child.kill('SIGKILL');
  const end = await ended;
  // What was cut off in naming was not named.
  return { acknowledged: output.split('\n').slice(0, -1), end };
}

function waitForEnd(child: ChildProcess): Promise<string | number | null> {
  return new Promise((resolve) => {
    child.on('close', (code, signal) => resolve(signal ?? code));
  });
}

/** Runs that mark one lesson, two at a time, each killed. */
async function markAndKill(writer: string, file: string, random: Random): Promise<readonly Run[]> {
  const runs: Run[] = [];
  while (runs.length < KILLS_EACH) {
    const pair = Array.from({ length: WRITERS }, (_, at) =>
      runAndKill(
        [writer, file, `writer ${at}`],
        random() < 0.2 ? { beforeFirst: random() * 150 } : { afterFirst: random() * 25 },
      ),
    );
    runs.push(...(await Promise.all(pair)));
  }
  return runs;
}

function expectNothingLost(file: string, runs: readonly Run[]): void {
  const journal = parseJournal(readFileSync(file, 'utf8'));
  if (!journal.ok) throw new Error('the journal can be read');
  const places = new Map(journal.value.map(({ id }, place) => [id, place]));
  for (const { acknowledged, end } of runs) {
    expect(end).toBe('SIGKILL');
    const found = acknowledged.map((id) => places.get(id) ?? -1);
    expect(found).not.toContain(-1);
    expect(found).toEqual([...found].sort((a, b) => a - b));
  }
  // A kill tears one line at most, and nothing else is ever wrong with the file.
  expect(journal.problems.filter(({ code }) => code !== 'journal-line-torn')).toEqual([]);
  expect(journal.problems.length).toBeLessThanOrEqual(runs.length);
}

test(`${KILLS} kills at random moments of marking lose no acknowledged decision`, async () => {
  const folder = makeTemporaryFolder();
  const writer = bundleProgram(new URL('./journal-writer.ts', import.meta.url));
  const random = seededRandom(2026);
  let acknowledged = 0;
  for (let killed = 0; killed < KILLS; killed += KILLS_EACH) {
    const file = path.join(folder, `marks-${killed}.jsonl`);
    const runs = await markAndKill(writer, file, random);
    expectNothingLost(file, runs);
    acknowledged += runs.reduce((sum, run) => sum + run.acknowledged.length, 0);
  }
  // The runs were killed in the middle of marking, not before or after it.
  expect(acknowledged).toBeGreaterThan(KILLS);
});
