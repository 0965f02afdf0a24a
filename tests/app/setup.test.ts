import { spawn } from 'node:child_process';
import { copyFile, mkdir, mkdtemp, readFile, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';

// The setup runs in a clone of its own with one dependency. npm and ffmpeg are stood in for by small programs, so
// that nothing is fetched; PATH holds nothing else, so that no package manager is found.

let clone = '';
let programs = '';

const NPM = `
const fs = require('fs');
fs.appendFileSync('npm-calls', process.argv.slice(2).join(' ') + '\\n');
const wanted = JSON.parse(fs.readFileSync('package-lock.json'));
fs.mkdirSync('node_modules/rope', { recursive: true });
setTimeout(() => fs.writeFileSync('node_modules/.package-lock.json', JSON.stringify(wanted)), 300);
console.log('npm talks');
`;

/** Brings every program that tests ask for at once, in packages of the names that Debian gives them. */
const APT = `
const fs = require('fs');
const args = process.argv.slice(2).filter((word) => !word.startsWith('-') && !word.includes('::'));
fs.appendFileSync('apt-calls', args.join(' ') + '\\n');
if (args[0] !== 'install') process.exit(0);
const programs = require('path').dirname(process.argv[1]);
for (const name of ['ffmpeg', 'ffprobe', 'perl', 'pdftoppm', 'zbarimg', 'redis-server', 'chromium-headless-shell'])
  fs.writeFileSync(programs + '/' + name, '#!' + process.execPath + '\\nconsole.log("ffmpeg version 6.0");', { mode: 0o755 });
`;

beforeEach(async () => {
  const top = await mkdtemp(join(tmpdir(), 'setup-'));
  clone = join(top, 'clone');
  programs = join(top, 'programs');
  await mkdir(join(clone, 'scripts'), { recursive: true });
  await mkdir(programs);
  await copyFile('scripts/setup.mjs', join(clone, 'scripts/setup.mjs'));
  await writeFile(join(programs, 'npm.js'), NPM);
  await symlink(process.execPath, join(programs, 'node'));
  await writeLock('1.0.0');
});

afterEach(() => rm(join(clone, '..'), { recursive: true }));

function writeLock(version: string): Promise<void> {
  const packages = {
    '': {},
    'node_modules/rope': { version },
    'node_modules/sail': { version, optional: true },
  };
  return writeFile(join(clone, 'package-lock.json'), JSON.stringify({ packages }));
}

async function writeFfmpeg(name: string, answer: string): Promise<string> {
  const path = join(programs, name);
  await writeFile(path, `#!${process.execPath}\nconsole.log(${JSON.stringify(answer)});\n`, { mode: 0o755 });
  return path;
}

interface Ended {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

function setUp(flags: readonly string[] = [], extra: Record<string, string> = {}): Promise<Ended> {
  const env = { PATH: programs, TMPDIR: join(clone, '..'), npm_execpath: join(programs, 'npm.js'), ...extra };
  const child = spawn(process.execPath, ['scripts/setup.mjs', ...flags], { cwd: clone, env });
  let out = '';
  let err = '';
  child.stdout.on('data', (data) => {
    out += data;
  });
  child.stderr.on('data', (data) => {
    err += data;
  });
  return new Promise((resolve) => {
    child.on('close', (code) => resolve({ code, out, err }));
  });
}

async function countNpmCalls(): Promise<number> {
  const calls = await readFile(join(clone, 'npm-calls'), 'utf8').catch(() => '');
  return calls.split('\n').length - 1;
}

describe('the setup', () => {
  test('installs what the lock file names, then has nothing left to do or to say', async () => {
    await writeFfmpeg('ffmpeg', 'ffmpeg version 6.0');
    const first = await setUp(['--quiet']);
    expect(first).toMatchObject({ code: 0, out: '', err: expect.stringContaining('Installing') });
    expect(await setUp(['--quiet'])).toEqual({ code: 0, out: '', err: '' });
    expect(await setUp()).toEqual({ code: 0, out: '', err: '' });
    expect(await countNpmCalls()).toBe(1);
  });

  test('installs again when the lock file asks for something else', async () => {
    await writeFfmpeg('ffmpeg', 'ffmpeg version 6.0');
    await setUp();
    await writeLock('2.0.0');
    expect(await setUp()).toMatchObject({ code: 0 });
    expect(await countNpmCalls()).toBe(2);
  });

  test('leaves modules alone that npm itself has brought up to date', async () => {
    await writeFfmpeg('ffmpeg', 'ffmpeg version 6.0');
    await setUp();
    await writeLock('2.0.0');
    await copyFile(join(clone, 'package-lock.json'), join(clone, 'node_modules/.package-lock.json'));
    expect(await setUp(['--quiet'])).toEqual({ code: 0, out: '', err: '' });
    expect(await countNpmCalls()).toBe(1);
  });

  test('runs once where it is started three times at once', async () => {
    await writeFfmpeg('ffmpeg', 'ffmpeg version 6.0');
    const ended = await Promise.all([setUp(), setUp(), setUp()]);
    expect(ended.map(({ code }) => code)).toEqual([0, 0, 0]);
    expect(await countNpmCalls()).toBe(1);
  });

  test('takes the ffmpeg that the environment names, and passes over one that does not answer as such', async () => {
    await writeFfmpeg('ffmpeg', 'ffmpeg version 6.0');
    const named = await writeFfmpeg('own', 'ffmpeg version 7.1');
    const other = await writeFfmpeg('other', 'something else');
    const readChoice = async () =>
      JSON.parse(await readFile(join(clone, 'node_modules/.routemark-lock'), 'utf8')).ffmpeg.path;
    await setUp([], { ROUTEMARK_FFMPEG: named });
    expect(await readChoice()).toBe(named);
    await setUp([], { ROUTEMARK_FFMPEG: other });
    expect(await readChoice()).toBe(join(programs, 'ffmpeg'));
  });

  test('says what to do and stops where there is no ffmpeg to be had', async () => {
    const { code, out, err } = await setUp(['--quiet']);
    expect([code, out]).toEqual([2, '']);
    expect(err.trim().split('\n').at(-1)).toContain('apt-get install ffmpeg');
  });

  test('says which tests will skip where their tools are missing', async () => {
    await writeFfmpeg('ffmpeg', 'ffmpeg version 6.0');
    const { code, err } = await setUp(['--for-tests']);
    expect(code).toBe(0);
    expect(err).toContain('Not found: perl, ffprobe, pdftoppm, zbarimg');
  });

  test.skipIf(process.getuid?.() !== 0)('asks for all packages at one go, where it may', async () => {
    await writeFile(join(programs, 'apt-get'), `#!${process.execPath}\n${APT}`, { mode: 0o755 });
    expect(await setUp(['--for-tests', '--for-browser-tests'])).toMatchObject({ code: 0, out: '' });
    expect((await readFile(join(clone, 'apt-calls'), 'utf8')).trim().split('\n')).toEqual([
      'update',
      'install perl ffmpeg poppler-utils zbar-tools redis-server chromium-headless-shell',
    ]);
    expect(await countNpmCalls()).toBe(1);
  });
});
