import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { writeSmallLesson } from '../contract/small-lesson.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

// A browser that writes down how it was started, and stays.
const BROWSER = `#!/bin/sh
echo "$@" >> "$STARTS_FILE"
exec sleep 20
`;

let home = '';
const running: ChildProcess[] = [];

beforeAll(async () => {
  home = await mkdtemp(path.join(tmpdir(), 'routemark-start-'));
  await writeFile(path.join(home, 'browser'), BROWSER, { mode: 0o755 });
  await writeSmallLesson(path.join(home, 'lesson'));
});
afterAll(async () => {
  for (const child of running) child.kill('SIGTERM');
  await rm(home, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
});

const listStarts = async () =>
  (await readFile(path.join(home, 'starts'), 'utf8').catch(() => ''))
    .split('\n')
    .filter((line) => line !== '');

/** `npm start` on the lesson as on a machine without a screen; resolves with its talk once a browser was started. */
async function start(wantedStarts: number): Promise<{ readonly said: string; readonly child: ChildProcess }> {
  const { DISPLAY: _, WAYLAND_DISPLAY: __, ROUTEMARK_FACE: ___, ...rest } = process.env;
  const env = {
    ...rest,
    ROUTEMARK_HOME: path.join(home, 'desk'),
    ROUTEMARK_CHROMIUM: path.join(home, 'browser'),
    STARTS_FILE: path.join(home, 'starts'),
  };
  const child = spawn(process.execPath, ['scripts/start.mjs', path.join(home, 'lesson')], { cwd: ROOT, env });
  running.push(child);
  let said = '';
  for (const stream of [child.stdout, child.stderr]) {
    stream?.setEncoding('utf8').on('data', (part: string) => {
      said += part;
    });
  }
  await expect.poll(listStarts, { timeout: 180_000 }).toHaveLength(wantedStarts);
  await expect.poll(() => said).toContain('window of its own');
  return { said, child };
}

describe.skipIf(process.platform !== 'linux')('npm start', () => {
  test('says in one line why it is the browser, opens a window of its own, and once only', async () => {
    const first = await start(1);
    const why = first.said.split('\n').filter((line) => line.includes('opens in the browser'));
    expect(why).toEqual(['The window opens in the browser, for there is no screen.']);
    const second = await start(2);
    expect(second.said).toContain('Routemark is running already; this is its window.');
    const [one = '', other = ''] = await listStarts();
    const readAddress = (line: string) => /--app=(http:\/\/127\.0\.0\.1:\d+)\/open\?key=[\w-]+/.exec(line);
    expect(readAddress(one)?.[1]).toBe(readAddress(other)?.[1]);
    expect(first.child.exitCode).toBeNull();
    const address = readAddress(other)?.[0].replace('--app=', '') ?? '';
    expect((await fetch(address, { redirect: 'manual' })).status).toBe(303);
  });
});
