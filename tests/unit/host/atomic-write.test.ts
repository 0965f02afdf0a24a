import { chmodSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { writeFileAtomically } from '../../../src-core/host/atomic-write.ts';
import { mountSmallDisk } from './small-disk.ts';
import { makeTemporaryFolder } from './temporary-folder.ts';

describe('writing a whole file', () => {
  test('leaves the new content and nothing else in the folder', async () => {
    const folder = makeTemporaryFolder();
    const file = path.join(folder, 'plan.json');
    writeFileSync(file, 'old');
    expect(await writeFileAtomically(file, 'né\r\n')).toEqual({ ok: true, value: 5, problems: [] });
    expect(readFileSync(file, 'utf8')).toBe('né\r\n');
    expect(readdirSync(folder)).toEqual(['plan.json']);
  });

  test('takes bytes as they are', async () => {
    const file = path.join(makeTemporaryFolder(), 'still.bin');
    await writeFileAtomically(file, Uint8Array.of(0, 255, 10));
    expect([...readFileSync(file)]).toEqual([0, 255, 10]);
  });

  test('keeps the permissions of the file it replaces', async () => {
    const file = path.join(makeTemporaryFolder(), 'plan.json');
    writeFileSync(file, 'old');
    chmodSync(file, 0o640);
    await writeFileAtomically(file, 'new');
    expect(statSync(file).mode & 0o777).toBe(0o640);
  });

  test('fails with a problem where the folder is not there', async () => {
    const file = path.join(makeTemporaryFolder(), 'gone', 'plan.json');
    expect(await writeFileAtomically(file, 'new')).toEqual({
      ok: false,
      problems: [{ code: 'folder-missing', path: file, cause: 'ENOENT' }],
    });
  });

  test('fails with a problem where a folder stands in its place, and cleans up', async () => {
    const folder = makeTemporaryFolder();
    const file = path.join(folder, 'plan.json');
    mkdirSync(file);
    const outcome = await writeFileAtomically(file, 'new');
    expect(outcome).toMatchObject({ ok: false, problems: [{ code: 'is-a-folder' }] });
    expect(readdirSync(folder)).toEqual(['plan.json']);
  });

  test('fails with a problem where the name is too long', async () => {
    const file = path.join(makeTemporaryFolder(), 'x'.repeat(300));
    expect(await writeFileAtomically(file, 'new')).toMatchObject({
      ok: false,
      problems: [{ code: 'name-too-long' }],
    });
  });

  test('of several writers at once leaves the whole of one of them', async () => {
    const folder = makeTemporaryFolder();
    const file = path.join(folder, 'plan.json');
    const contents = [...'abcdefgh'].map((letter) => letter.repeat(50_000));
    const outcomes = await Promise.all(contents.map((content) => writeFileAtomically(file, content)));
    expect(outcomes.every(({ ok }) => ok)).toBe(true);
    expect(contents).toContain(readFileSync(file, 'utf8'));
    expect(readdirSync(folder)).toEqual(['plan.json']);
  });

  test('on a disk that fills up midway keeps the old file whole and removes the rest', async (context) => {
    const disk = mountSmallDisk(256);
    if (disk === null) return context.skip('no right to mount a small disk here');
    const file = path.join(disk, 'plan.json');
    writeFileSync(file, 'old');
    expect(await writeFileAtomically(file, 'n'.repeat(1_000_000))).toEqual({
      ok: false,
      problems: [{ code: 'disk-full', path: file, cause: 'ENOSPC' }],
    });
    expect(readFileSync(file, 'utf8')).toBe('old');
    expect(readdirSync(disk)).toEqual(['plan.json']);
    expect(await writeFileAtomically(file, 'new')).toMatchObject({ ok: true });
  });
});
