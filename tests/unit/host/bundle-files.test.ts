import { execFileSync, spawnSync } from 'node:child_process';
import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { strToU8, zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { readBundle } from '../../../src-core/host/read-bundle.ts';
import { writeBundle } from '../../../src-core/host/write-bundle.ts';
import { makeTemporaryFolder } from './temporary-folder.ts';

const hasPython = spawnSync('python3', ['--version']).status === 0;

const FILES = new Map([
  ['manifest.csv', 'propertyName,value\r\nmanifest.version,1.0\r\n'],
  ['orgs.csv', 'sourcedId\r\n"Käpt’n, ""Quay"""\r\n'],
]);

describe('a set of files', () => {
  test('comes back from an archive as it was written, with every file at its root', async () => {
    const folder = makeTemporaryFolder();
    const place = path.join(folder, 'marks.zip');
    expect((await writeBundle(place, FILES)).ok).toBe(true);
    const bundle = await readBundle(place);
    expect(bundle.ok && bundle.value).toMatchObject({ name: 'marks.zip', isArchive: true });
    expect(bundle.ok && bundle.value.files).toEqual(
      [...FILES].map(([file, text]) => ({ path: file, text, packing: 'deflated' })),
    );
  });

  test('is the same archive to the byte the second time', async () => {
    const folder = makeTemporaryFolder();
    const [one, two] = ['one.zip', 'two.zip'].map((name) => path.join(folder, name)) as [string, string];
    await writeBundle(one, FILES);
    await writeBundle(two, FILES);
    expect(await readFile(one)).toEqual(await readFile(two));
  });

  test.skipIf(!hasPython)(
    'is read by another program, Python’s zipfile (skipped without python3)',
    async () => {
      const folder = makeTemporaryFolder();
      const place = path.join(folder, 'python.zip');
      const script = `import sys, zipfile
z = zipfile.ZipFile(sys.argv[1])
assert z.testzip() is None
print(",".join(f"{i.filename}:{i.compress_type}" for i in z.infolist()))`;
      await writeBundle(place, FILES);
      const listed = execFileSync('python3', ['-c', script, place], { encoding: 'utf8' });
      expect(listed.trim()).toBe('manifest.csv:8,orgs.csv:8');
    },
  );

  test('goes into a folder, and never among other files', async () => {
    const folder = makeTemporaryFolder();
    const place = path.join(folder, 'marks');
    await writeBundle(place, FILES);
    expect((await readdir(place)).sort()).toEqual(['manifest.csv', 'orgs.csv']);
    expect((await writeBundle(place, FILES)).ok).toBe(true);
    await writeFile(path.join(place, 'lineItems.csv'), 'of an older set');
    expect(await writeBundle(place, FILES)).toMatchObject({ ok: false, problems: [{ code: 'is-a-folder' }] });
    const bundle = await readBundle(place);
    expect(bundle.ok && bundle.value.files.map(({ path: file }) => file).sort()).toEqual([
      'lineItems.csv',
      'manifest.csv',
      'orgs.csv',
    ]);
  });

  test('tells nested files by their path, and passes over what systems leave in archives', async () => {
    const folder = makeTemporaryFolder();
    const place = path.join(folder, 'nested.zip');
    const packed = {
      'set/manifest.csv': strToU8('a'),
      '__MACOSX/._x': strToU8('b'),
      '.DS_Store': strToU8('c'),
    };
    await writeFile(place, zipSync(packed));
    const bundle = await readBundle(place);
    expect(bundle.ok && bundle.value.files.map(({ path: file }) => file)).toEqual(['set/manifest.csv']);
  });

  test('is unreadable where it is no archive, or cut off', async () => {
    const folder = makeTemporaryFolder();
    const text = path.join(folder, 'notes.zip');
    await writeFile(text, 'not an archive');
    expect(await readBundle(text)).toMatchObject({ ok: false, problems: [{ code: 'bundle-unreadable' }] });
    expect(await readBundle(path.join(folder, 'none.zip'))).toMatchObject({ ok: false });
    const cut = path.join(folder, 'cut.zip');
    await writeBundle(cut, FILES);
    await writeFile(cut, (await readFile(cut)).subarray(0, 60));
    expect(await readBundle(cut)).toMatchObject({ ok: false, problems: [{ code: 'bundle-unreadable' }] });
    await mkdir(path.join(folder, 'empty'));
    expect(await readBundle(path.join(folder, 'empty'))).toMatchObject({ ok: true, value: { files: [] } });
  });
});
