import { chmod, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, test, vi } from 'vitest';
import { openEvidenceCache } from '../../../src-core/host/evidence-cache.ts';
import { findFfmpeg } from '../../../src-core/host/find-ffmpeg.ts';
import { lookAtClip } from '../../../src-core/host/look-at-clip.ts';
import { watchClip } from '../../../src-core/host/watch-clip.ts';
import { filmClip } from './film-clip.ts';
import { makeTemporaryFolder } from './temporary-folder.ts';

let folder = '';
let real = '';
let clip = { path: '', contentId: 'c1' };

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'interrupted-'));
  const found = await findFfmpeg();
  if (!found.ok) throw new Error('these tests need ffmpeg');
  real = found.value.path;
  clip = { ...clip, path: await filmClip(join(folder, 'clip.mp4'), { shots: [{ seconds: 6 }] }) };
});

afterAll(() => rm(folder, { recursive: true }));

afterEach(() => {
  vi.unstubAllEnvs();
});

/** The real ffmpeg behind a few lines of shell, which run before it decodes; asked for its version, it just answers. */
async function wrapFfmpeg(name: string, ...lines: readonly string[]): Promise<void> {
  const program = join(folder, name);
  const version = `case "$*" in *-version*|*-encoders*|*-formats*) exec ${real} "$@";; esac`;
  await writeFile(program, ['#!/bin/sh', version, ...lines].join('\n'));
  await chmod(program, 0o755);
  vi.stubEnv('ROUTEMARK_FFMPEG', program);
}

/** Reads at the clip's own speed, so that there is time to end it on the way; its process number is left in a file. */
const slowly = (pidFile: string) => [
  `case "$*" in *" copy "*) exec ${real} "$@";; esac`,
  `echo $$ > ${pidFile}`,
  `exec ${real} -re "$@"`,
];

const openCache = () => {
  const place = join(makeTemporaryFolder(), 'evidence');
  return { place, cache: openEvidenceCache(place) };
};

async function expectSoundAfterwards({ place, cache }: ReturnType<typeof openCache>): Promise<void> {
  expect(await readdir(place).catch(() => [])).toEqual([]);
  vi.unstubAllEnvs();
  expect(await watchClip(cache, clip, { threads: 1 })).toMatchObject({ problems: [] });
}

describe.skipIf(process.platform === 'win32')('an ffmpeg ended from outside', () => {
  test.each(['SIGKILL', 'SIGTERM', 'SIGINT', 'SIGSEGV'] as const)(
    'by %s while a clip is watched is never kept as the clip’s own fault',
    async (signal) => {
      const pidFile = join(folder, `${signal}.pid`);
      await wrapFfmpeg(`slow-${signal}`, ...slowly(pidFile));
      const opened = openCache();
      const watching = watchClip(opened.cache, clip, { threads: 1 });
      const pid = await vi.waitFor(
        async () => {
          const written = Number(await readFile(pidFile, 'utf8'));
          expect(written).toBeGreaterThan(0);
          return written;
        },
        { timeout: 20_000, interval: 50 },
      );
      await new Promise((done) => setTimeout(done, 700));
      process.kill(pid, signal);
      expect((await watching).problems).toMatchObject([{ code: 'decode-interrupted' }]);
      await expectSoundAfterwards(opened);
    },
  );

  test.each([
    ['a clip is watched', watchClip],
    ['a clip is looked at', lookAtClip],
  ])('before it says anything of the clip, when %s', async (_, work) => {
    await wrapFfmpeg('killed-at-once', 'kill -KILL $$');
    const opened = openCache();
    expect((await work(opened.cache, clip, {})).problems).toMatchObject([{ code: 'decode-interrupted' }]);
    await expectSoundAfterwards(opened);
  });

  test('that finds no memory to start in', async () => {
    await wrapFfmpeg(
      'starved',
      'case "$*" in *" copy "*) ;; *) ulimit -v 100000;; esac',
      `exec ${real} "$@"`,
    );
    const opened = openCache();
    const { problems } = await watchClip(opened.cache, clip, { threads: 1 });
    expect(problems).toMatchObject([{ code: 'decode-interrupted' }]);
    await expectSoundAfterwards(opened);
  });

  test('whose encoder gave up, which the clip cannot help', async () => {
    const words = '[error] Error submitting video frame to the encoder';
    await wrapFfmpeg(
      'tired',
      `case "$*" in *" copy "*) exec ${real} "$@";; esac`,
      `echo "${words}" >&2`,
      'exit 1',
    );
    const opened = openCache();
    const { problems } = await watchClip(opened.cache, clip, { threads: 1 });
    expect(problems).toMatchObject([{ code: 'decode-interrupted' }]);
    await expectSoundAfterwards(opened);
  });

  test('or gone since the folder was read, together with its clip', async () => {
    const opened = openCache();
    const gone = { ...clip, path: join(folder, 'unplugged', 'clip.mp4') };
    const { problems } = await watchClip(opened.cache, gone, { threads: 1 });
    expect(problems).toMatchObject([
      { code: 'decode-interrupted', detail: expect.stringContaining('No such file') },
    ]);
    await expectSoundAfterwards(opened);
  });
});
