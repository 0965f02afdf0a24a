import { execFile, spawnSync } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { writeSmallLesson } from '../contract/small-lesson.ts';
import { canBrowse } from './browser.ts';
import { bundleProgram } from './bundle-program.ts';
import { MAIN } from './command-line.ts';

// The kernel counts for each network namespace what it had no route for: whatever a program and its children ask of
// another host, name servers included, whether they say so or not. It counts IPv4 alone, which all of them would try.

const ALONE = fileURLToPath(new URL('../../scripts/without-network.mjs', import.meta.url));
const VISIT = fileURLToPath(new URL('./desk-visit.ts', import.meta.url));
// Without the guard of the tests, which would refuse before the kernel is asked.
const env = { ...process.env, NODE_OPTIONS: '' };

interface End {
  readonly code: number;
  readonly stdout: string;
  readonly stderr: string;
}

/** Runs a Node program where nothing but loopback can be reached. */
function runAlone(...args: readonly string[]): Promise<End> {
  return new Promise((resolve) => {
    execFile(process.execPath, [ALONE, process.execPath, ...args], { env }, (error, stdout, stderr) => {
      resolve({ code: error ? Number(error.code) : 0, stdout, stderr });
    });
  });
}

function canBeAlone(): boolean {
  const { stderr } = spawnSync(process.execPath, [ALONE, 'true'], { env, encoding: 'utf8' });
  const can = process.platform === 'linux' && stderr === '';
  if (!can) process.stderr.write(`Skipped: no network namespace here. ${stderr}\n`);
  return can;
}

describe.runIf(canBeAlone())('where nothing but loopback can be reached', () => {
  let folder = '';
  beforeAll(async () => {
    folder = await mkdtemp(path.join(tmpdir(), 'routemark-alone-'));
    await writeSmallLesson(path.join(folder, 'lesson'));
  });
  afterAll(() => rm(folder, { recursive: true, force: true }));

  test('a program that asks for another host, by number or by name, is noticed, though it says nothing', async () => {
    const ask = (host: string) => `require('node:net').connect(80, '${host}').on('error', () => {});`;
    const byNumber = await runAlone('-e', ask('192.0.2.7'));
    expect(byNumber).toMatchObject({ code: 3, stderr: 'Attempts to reach another host: 1.\n' });
    const own = await runAlone('-e', `${ask('127.0.0.1')}${ask('localhost')}`);
    expect(own).toMatchObject({ code: 0, stderr: '' });
    const child = `require('node:child_process').execFileSync(process.execPath, ['-e', ${JSON.stringify(ask('quay.invalid'))}])`;
    expect((await runAlone('-e', child)).code).toBe(3);
  });

  test('the command line watches and grades a lesson and asks for nobody', async () => {
    const program = bundleProgram(MAIN);
    const clip = path.join(folder, 'lesson/clips/teal/IMG_1000.MP4');
    expect(await runAlone(program, 'evidence', clip)).toMatchObject({ code: 0, stderr: '' });
    const { code, stdout, stderr } = await runAlone(program, 'grade', path.join(folder, 'lesson'));
    expect(code).toBe(0);
    expect(stderr).not.toContain('another host');
    expect(stdout).toContain('Small circuit');
  });

  test.runIf(canBrowse())('a desk and its window show every screen and ask for nobody', async () => {
    const visit = ['--import', 'tsx', VISIT, path.join(folder, 'lesson')];
    expect(await runAlone(...visit)).toEqual({ code: 0, stdout: '[]\n', stderr: '' });
  });
});
