import { execFileSync } from 'node:child_process';
import { mkdtemp, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { withFileBytes } from '../../../src-core/host/file-byte-source.ts';

let folder = '';
const inside = (name: string) => join(folder, name);
const bytes = Uint8Array.from({ length: 10_000 }, (_, index) => index % 251);

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'routemark-bytes-'));
  await writeFile(inside('clip.bin'), bytes);
  await writeFile(inside('empty.bin'), '');
});
afterAll(() => rm(folder, { recursive: true }));

describe('a file as a source of bytes', () => {
  test('gives the very bytes that are asked for', async () => {
    await withFileBytes(inside('clip.bin'), async (source) => {
      expect(source.size).toBe(10_000);
      expect(await source.read(0, 16)).toEqual(bytes.subarray(0, 16));
      expect(await source.read(5000, 3000)).toEqual(bytes.subarray(5000, 8000));
    });
  });

  test('gives fewer at the end, none beyond it, and none of an empty file', async () => {
    await withFileBytes(inside('clip.bin'), async (source) => {
      expect(await source.read(9_990, 100)).toEqual(bytes.subarray(9_990));
      expect((await source.read(10_000, 8)).length).toBe(0);
      expect((await source.read(20_000, 8)).length).toBe(0);
    });
    expect(await withFileBytes(inside('empty.bin'), async ({ size }) => size)).toBe(0);
  });

  test('is closed afterwards, also where its user throws', async () => {
    let late: (() => Promise<Uint8Array>) | undefined;
    const used = withFileBytes(inside('clip.bin'), async (source) => {
      late = () => source.read(0, 8);
      throw new Error('stop');
    });
    await expect(used).rejects.toThrow('stop');
    await expect(late?.()).rejects.toThrow(/closed/);
  });
});

describe('what is no file is refused with the system’s code', () => {
  test('a missing file', async () => {
    await expect(withFileBytes(inside('none.mp4'), async () => 0)).rejects.toMatchObject({ code: 'ENOENT' });
  });

  test('a folder', async () => {
    await expect(withFileBytes(folder, async () => 0)).rejects.toMatchObject({
      code: 'EISDIR',
      syscall: 'open',
    });
  });

  test.skipIf(process.platform === 'win32')('a link, even to a good file', async () => {
    await symlink(inside('clip.bin'), inside('link.mp4'));
    await expect(withFileBytes(inside('link.mp4'), async () => 0)).rejects.toMatchObject({ code: 'ELOOP' });
  });

  test.skipIf(process.platform === 'win32')('a pipe, without waiting for its other end', async () => {
    execFileSync('mkfifo', [inside('pipe.mp4')]);
    await expect(withFileBytes(inside('pipe.mp4'), async () => 0)).rejects.toMatchObject({ code: 'EINVAL' });
  });
});
