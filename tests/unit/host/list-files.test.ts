import { chmodSync, mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { openLessonPorts } from '../../../src-core/host/lesson-ports.ts';
import { listFiles } from '../../../src-core/host/list-files.ts';
import { makeTemporaryFolder } from './temporary-folder.ts';

/** A folder with files at these paths. */
function makeFolder(...files: readonly string[]): string {
  const folder = makeTemporaryFolder();
  for (const file of files) {
    mkdirSync(path.dirname(path.join(folder, file)), { recursive: true });
    writeFileSync(path.join(folder, file), file);
  }
  return folder;
}

const list = async (folder: string) => {
  const { files, problems } = await listFiles(folder);
  return { paths: files.map((file) => file.path), problems };
};

describe('a folder’s files', () => {
  test('come in the order people count, with name, size and date', async () => {
    const folder = makeFolder('teal/IMG_10.MOV', 'teal/IMG_9.MOV', 'a.mov');
    const { files, name, problems } = await listFiles(folder);
    expect(files.map((file) => file.path)).toEqual(['a.mov', 'teal/IMG_9.MOV', 'teal/IMG_10.MOV']);
    expect(files[1]).toMatchObject({ name: 'IMG_9.MOV', sizeBytes: 14 });
    expect(Number.isInteger(files[1]?.modifiedMs)).toBe(true);
    expect({ name, problems }).toEqual({ name: path.basename(folder), problems: [] });
  });

  test('leave out what is hidden, companions stay for others to judge', async () => {
    const folder = makeFolder('.hidden/a.mov', '._a.mov', 'a.AAE', 'a.mov');
    expect(await list(folder)).toEqual({ paths: ['a.AAE', 'a.mov'], problems: [] });
  });

  test('do not go beyond links, which are named', async () => {
    const folder = makeFolder('teal/a.mov');
    symlinkSync(path.join(folder, 'teal'), path.join(folder, 'loop'));
    symlinkSync('/nowhere', path.join(folder, 'teal', 'broken.mov'));
    expect(await list(folder)).toEqual({
      paths: ['teal/a.mov'],
      problems: [
        { code: 'link-not-followed', path: 'loop' },
        { code: 'link-not-followed', path: 'teal/broken.mov' },
      ],
    });
  });

  test('come from twelve folders down and no deeper', async () => {
    const deep = Array.from({ length: 12 }, (_, at) => String(at)).join('/');
    const folder = makeFolder(`${deep}/a.mov`, `${deep}/below/b.mov`);
    const found = await list(folder);
    expect(found.paths).toEqual([`${deep}/a.mov`]);
    expect(found.problems).toEqual([{ code: 'folder-too-deep', path: `${deep}/below` }]);
  });

  test('have any names the disk takes', async () => {
    const names = [
      'Zoé 🎬.mov',
      'é'.repeat(125).concat('.mov'),
      '-rf.mov',
      'a\nb.mov',
      '%00#?.mov',
      '名前.mov',
      'a"b\'.mov',
    ];
    expect(new Set((await list(makeFolder(...names))).paths)).toEqual(new Set(names));
  });

  test.skipIf(process.getuid?.() === 0)(
    'are listed though one folder among them may not be opened',
    async () => {
      const folder = makeFolder('shut/a.mov', 'open/b.mov');
      chmodSync(path.join(folder, 'shut'), 0);
      const found = await list(folder);
      chmodSync(path.join(folder, 'shut'), 0o755);
      expect(found).toEqual({
        paths: ['open/b.mov'],
        problems: [{ code: 'folder-unreadable', path: 'shut' }],
      });
    },
  );

  test('are none where there is no folder, or a file in its place', async () => {
    const folder = makeFolder('a.mov');
    const missing = path.join(folder, 'nowhere');
    expect(await list(missing)).toEqual({
      paths: [],
      problems: [{ code: 'clips-folder-missing', path: missing }],
    });
    const file = path.join(folder, 'a.mov');
    expect(await list(file)).toEqual({ paths: [], problems: [{ code: 'folder-unreadable', path: file }] });
  });

  test('are listed and opened by the thousand', async () => {
    const names = Array.from({ length: 5000 }, (_, at) => `squad ${at % 8}/IMG_${at}.MOV`);
    const folder = makeFolder(...names);
    const { signal } = new AbortController();
    const ports = openLessonPorts({ folder, clipsFolder: folder, signal });
    const { files, problems } = await ports.listClips();
    expect({ count: files.length, problems }).toEqual({ count: 5000, problems: [] });
    const readings = await ports.mapAll(files, (file) => ports.readFile(file.path));
    expect(readings.every((reading) => reading?.media.ok === false)).toBe(true);
    expect(new Set(readings.map((reading) => reading?.sampleHash)).size).toBe(5000);
  });
});
