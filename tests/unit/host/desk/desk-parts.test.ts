import { mkdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, onTestFinished, test } from 'vitest';
import type { Progress } from '../../../../src-core/contract/progress.ts';
import { claim } from '../../../../src-core/host/desk/claim.ts';
import { getHomeFolder, openDeskRecord } from '../../../../src-core/host/desk/desk-record.ts';
import { lookInto, openFolderTokens } from '../../../../src-core/host/desk/folder-tokens.ts';
import { isPlainPath } from '../../../../src-core/host/desk/inbox.ts';
import { openPace } from '../../../../src-core/host/desk/pace.ts';
import { openSharedJob } from '../../../../src-core/host/desk/shared-job.ts';
import { isWithin } from '../../../../src-core/host/is-within.ts';
import { readCookieSecret } from '../../../../src-core/host/loopback/keys.ts';
import { findAppBrowser } from '../../../../src-core/host/open-browser.ts';
import { makeTemporaryFolder } from '../temporary-folder.ts';

describe('time left', () => {
  test('is told from the step’s own pace once there is something to go by', () => {
    let nowMs = 0;
    const getSecondsLeft = openPace(() => nowMs);
    const at = (ms: number, progress: Progress) => {
      nowMs = ms;
      return getSecondsLeft(progress);
    };
    expect(at(0, { step: 'read', done: 0, total: 10 })).toBeNull();
    expect(at(1000, { step: 'read', done: 1, total: 10 })).toBeNull();
    expect(at(2000, { step: 'read', done: 4, total: 10 })).toBe(3);
    expect(at(9000, { step: 'read', done: 10, total: 10 })).toBe(0);
    expect(at(9000, { step: 'copy', done: 0, total: 2, doneBytes: 0, totalBytes: 900 })).toBeNull();
    expect(at(11_000, { step: 'copy', done: 1, total: 2, doneBytes: 300, totalBytes: 900 })).toBe(4);
  });
});

describe('work that several faces wait for', () => {
  const context = (stop = new AbortController()) => ({ stop, signal: stop.signal, onProgress: () => {} });

  test('runs once, and again for who asks afterwards', async () => {
    let runs = 0;
    const job = openSharedJob(async () => {
      runs += 1;
      return runs;
    });
    expect(await Promise.all([job.join(context()), job.join(context())])).toEqual([1, 1]);
    expect(await job.join(context())).toBe(2);
  });

  test('goes on while somebody waits, and is stopped when the last one leaves', async () => {
    let isStopped = false;
    const job = openSharedJob<never>(
      ({ signal }) =>
        new Promise((_, reject) => {
          signal.addEventListener('abort', () => {
            isStopped = true;
            reject(signal.reason);
          });
        }),
    );
    const [one, other] = [context(), context()];
    const results = Promise.allSettled([job.join(one), job.join(other)]);
    await Promise.resolve();
    one.stop.abort();
    await new Promise((resolve) => setImmediate(resolve));
    expect([isStopped, job.isRunning()]).toEqual([false, true]);
    other.stop.abort();
    expect((await results).map(({ status }) => status)).toEqual(['rejected', 'rejected']);
    expect([isStopped, job.isRunning()]).toEqual([true, false]);
  });
});

describe('a claim', () => {
  test('is one process’s, which answers whoever comes second', async () => {
    const thing = `test ${process.pid} ${performance.now()}`;
    const first = await claim(thing, '', (message) => `heard ${message}`);
    if (!first.held) throw new Error('nobody else claims this');
    onTestFinished(() => first.claim.release());
    expect(await claim(thing, 'hello', () => '')).toEqual({ held: false, answer: 'heard hello' });
    first.claim.release();
    const third = await claim(thing, '', () => '');
    expect(third.held).toBe(true);
    if (third.held) third.claim.release();
  });
});

describe('folders', () => {
  test('are handed out as tokens that nobody can guess, one a folder', () => {
    const tokens = openFolderTokens();
    const one = tokens.hand('/some/folder');
    expect(tokens.hand('/some/folder/').token).toBe(one.token);
    expect(tokens.find(one.token)).toBe('/some/folder');
    expect(openFolderTokens().find(one.token)).toBeNull();
  });

  test('are walked upwards no further than to where one may begin', async () => {
    const top = makeTemporaryFolder();
    const inner = path.join(top, 'Videos', 'tablets');
    mkdirSync(path.join(inner, '.hidden'), { recursive: true });
    mkdirSync(path.join(inner, 'teal'));
    writeFileSync(path.join(inner, 'notes.txt'), '');
    const tokens = openFolderTokens();
    const begin = [path.join(top, 'Videos')];
    const look = await lookInto(tokens, inner, begin);
    expect(look?.folders.map(({ name }) => name)).toEqual(['teal']);
    expect(look?.parent?.name).toBe('Videos');
    expect((await lookInto(tokens, begin[0] ?? '', begin))?.parent).toBeNull();
    expect(await lookInto(tokens, path.join(inner, 'pulled out'), begin)).toBeNull();
  });

  test('lie in each other by their parts, not by their letters', () => {
    expect(isWithin('/a/b', '/a')).toBe(true);
    expect(isWithin('/a', '/a')).toBe(true);
    expect(isWithin('/ab', '/a')).toBe(false);
    expect(isWithin('/a', '/a/b')).toBe(false);
    expect(isWithin('/a/..b', '/a')).toBe(true);
  });
});

test.each([
  ['Teal/DCIM/100APPLE/IMG_0012.MOV', true],
  ['команда/клип 1.mp4', true],
  ['..', false],
  ['a/../b', false],
  ['/a', false],
  ['a\\b', false],
  ['a:b', false],
  ['a/ b', false],
  ['a.', false],
  ['a\nb', false],
  [`${'a/'.repeat(12)}b`, false],
  ['a'.repeat(201), false],
])('a dropped file may be called %j: %s', (name, isFine) => {
  expect(isPlainPath(name)).toBe(isFine);
});

describe('what the desk remembers', () => {
  const lesson = {
    lesson: '0123456789abcdef',
    path: '/lessons/a',
    clipsPath: null,
    title: 'Harbour',
    className: '7 Brine',
    date: '2025-05-15',
    openedMs: 1,
    isDemo: false,
  };

  test('is there again after a start, and its loss is no harm', async () => {
    const home = path.join(makeTemporaryFolder(), 'home');
    const record = await openDeskRecord(home);
    await record.change((now) => ({ ...now, lessons: [lesson] }));
    expect((await openDeskRecord(home)).get().lessons).toEqual([lesson]);
    writeFileSync(path.join(home, 'desk.json'), '{"lessons":');
    expect((await openDeskRecord(home)).get()).toEqual({
      lessons: [],
      seconds: [],
      mappings: [],
      lastFolder: null,
      schoolSet: null,
    });
  });

  test('lies where this user’s settings lie, or where the environment says', () => {
    expect(getHomeFolder({ ROUTEMARK_HOME: '/elsewhere' })).toBe('/elsewhere');
    expect(path.isAbsolute(getHomeFolder({}))).toBe(true);
  });

  test('has a key for browsers that is this user’s alone and stays the same', async () => {
    const home = path.join(makeTemporaryFolder(), 'home');
    const secret = await readCookieSecret(home);
    expect(await readCookieSecret(home)).toBe(secret);
    expect(readFileSync(path.join(home, 'window-key'), 'utf8')).toBe(`${secret}\n`);
    if (process.platform !== 'win32')
      expect(statSync(path.join(home, 'window-key')).mode & 0o777).toBe(0o600);
  });
});

test('a browser that is named is taken before those that are found', () => {
  expect(findAppBrowser({ ROUTEMARK_CHROMIUM: process.execPath, PATH: '/usr/bin' })).toBe(process.execPath);
  expect(findAppBrowser({ ROUTEMARK_CHROMIUM: '/nowhere', PATH: '/nowhere' })).toBeNull();
});
