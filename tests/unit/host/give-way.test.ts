import { chmod, readFile, writeFile } from 'node:fs/promises';
import { getPriority } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { openEvidenceCache } from '../../../src-core/host/evidence-cache.ts';
import { findFfmpeg } from '../../../src-core/host/find-ffmpeg.ts';
import { watchClip } from '../../../src-core/host/watch-clip.ts';
import { filmClip } from './film-clip.ts';
import { makeTemporaryFolder } from './temporary-folder.ts';

afterEach(() => {
  vi.unstubAllEnvs();
});

/** The real ffmpeg, which leaves its process number in a file and reads at the clip's own speed. */
async function wrapFfmpeg(folder: string): Promise<string> {
  const found = await findFfmpeg();
  if (!found.ok) throw new Error('this test needs ffmpeg');
  const real = found.value.path;
  const pidFile = join(folder, 'pid');
  const lines = [
    '#!/bin/sh',
    `case "$*" in *-version*|*-encoders*|*-formats*|*" copy "*) exec ${real} "$@";; esac`,
    `echo $$ > ${pidFile}`,
    `exec ${real} -re "$@"`,
  ];
  await writeFile(join(folder, 'ffmpeg'), lines.join('\n'));
  await chmod(join(folder, 'ffmpeg'), 0o755);
  vi.stubEnv('ROUTEMARK_FFMPEG', join(folder, 'ffmpeg'));
  return pidFile;
}

describe.skipIf(process.platform === 'win32')('ffmpeg', () => {
  test.each([
    ['gives way to all else while a clip is watched in the background', true],
    ['does not while the teacher waits for the clip', false],
  ])('%s', async (_, isBackground) => {
    const folder = makeTemporaryFolder();
    const path = await filmClip(join(folder, 'clip.mp4'), { shots: [{ seconds: 3 }] });
    const pidFile = await wrapFfmpeg(folder);
    const controller = new AbortController();
    const watching = watchClip(
      openEvidenceCache(join(folder, 'evidence')),
      { path, contentId: 'c1' },
      { threads: 1, isBackground, signal: controller.signal },
    );
    const pid = await vi.waitFor(
      async () => {
        const written = Number(await readFile(pidFile, 'utf8'));
        expect(written).toBeGreaterThan(0);
        return written;
      },
      { timeout: 20_000, interval: 50 },
    );
    const own = getPriority();
    // Run by somebody who gives way already, both do.
    const expected = isBackground ? Math.max(own, 5) : own;
    expect(getPriority(pid)).toBe(expected);
    controller.abort();
    await watching;
  });
});
