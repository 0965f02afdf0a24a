import { chmod, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { runFfmpeg } from '../../../src-core/host/ffmpeg.ts';
import { findFfmpeg } from '../../../src-core/host/find-ffmpeg.ts';
import { makeTemporaryFolder } from './temporary-folder.ts';

/** The real ffmpeg for what is asked of it before a run; in a run it neither works nor heeds any wish to end. */
const writeDeaf = (real: string) => `#!/bin/sh
case "$*" in *-version*|*-encoders*|*-formats*) exec ${real} "$@";; esac
trap '' TERM
echo $$ > "$(dirname "$0")/pid"
while :; do sleep 0.05; done
`;

describe.skipIf(process.platform === 'win32')('an ffmpeg that does not heed SIGTERM', () => {
  test('is killed after its grace, and says so', async () => {
    const folder = makeTemporaryFolder();
    const path = join(folder, 'ffmpeg');
    const found = await findFfmpeg();
    if (!found.ok) throw new Error('this test needs ffmpeg');
    await writeFile(path, writeDeaf(found.value.path));
    await chmod(path, 0o755);
    const controller = new AbortController();
    const run = runFfmpeg(
      { ...found.value, path },
      {
        ...{ inputs: [{ path: '/nowhere.mp4', options: [] }], filters: [], maps: ['0:v:0'] },
        ...{ output: ['-f', 'null'], limitSeconds: 60, signal: controller.signal, onLine: () => {} },
      },
    );
    const readPid = async () => Number(await readFile(join(folder, 'pid'), 'utf8').catch(() => '0'));
    await expect.poll(readPid, { timeout: 30_000 }).toBeGreaterThan(0);
    const pid = await readPid();
    controller.abort();
    expect(await run.ended).toEqual({ reason: 'cancelled', lastError: 'ended by SIGKILL' });
    expect(() => process.kill(pid, 0)).toThrow('ESRCH');
  });
});
