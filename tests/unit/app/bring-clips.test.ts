import { chmod, mkdir, mkdtemp, readdir, readFile, rm, stat, utimes, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type BroughtClips, bringClips } from '../../../src-core/app/bring-clips.ts';
import { listSources, openBringPorts } from '../../../src-core/host/bring-ports.ts';
import { listFiles } from '../../../src-core/host/list-files.ts';
import { buildSmallPlan } from '../lesson/small-plan.ts';

const plan = buildSmallPlan();
let root = '';
let clips = '';

beforeEach(async () => {
  root = await mkdtemp(path.join(tmpdir(), 'routemark-bring-'));
  clips = path.join(root, 'lesson', 'clips');
});
afterEach(() => rm(root, { recursive: true, force: true }));

async function put(relative: string, content: string): Promise<string> {
  const file = path.join(root, relative);
  await mkdir(path.dirname(file), { recursive: true });
  await writeFile(file, content);
  return file;
}

async function bring(...folders: string[]): Promise<BroughtClips> {
  const controller = new AbortController();
  const ports = await openBringPorts(clips, controller.signal);
  const sources = await listSources(folders.map((folder) => path.join(root, folder)));
  const job = { signal: controller.signal, onProgress: () => {} };
  return bringClips(sources, await listFiles(clips), { plan, ports, job });
}

async function snapshot(): Promise<Record<string, string>> {
  const names = await readdir(clips, { recursive: true });
  const files = await Promise.all(
    names.map(async (name) => {
      const file = path.join(clips, name);
      return (await stat(file)).isFile() ? [[name, await readFile(file, 'utf8')] as const] : [];
    }),
  );
  return Object.fromEntries(files.flat().sort());
}

describe('bringing clips into a lesson', () => {
  test('gives each squad a folder and keeps names and dates', async () => {
    const source = await put('in/teal squad/DCIM/100APPLE/IMG_0001.MOV', 'first');
    await put('in/Tablet 2/b.mp4', 'second');
    const filmed = new Date('2025-05-15T13:47:00Z');
    await utimes(source, filmed, filmed);
    const brought = await bring('in');
    expect(brought).toEqual({
      copied: expect.arrayContaining(['Teal/IMG_0001.MOV', 'Plum/b.mp4']),
      alreadyThere: 0,
      problems: [],
    });
    expect(await snapshot()).toEqual({ 'Plum/b.mp4': 'second', 'Teal/IMG_0001.MOV': 'first' });
    expect((await stat(path.join(clips, 'Teal/IMG_0001.MOV'))).mtimeMs).toBe(filmed.getTime());
  });

  test('twice changes nothing, under whatever name the clip comes back', async () => {
    await put('in/teal/IMG_0001.MOV', 'first');
    await bring('in');
    const before = await snapshot();
    await put('in/teal/IMG_0001 (1).MOV', 'first');
    expect(await bring('in')).toEqual({ copied: [], alreadyThere: 2, problems: [] });
    expect(await snapshot()).toEqual(before);
  });

  test('never replaces another clip of the same name', async () => {
    await put('in/teal/100APPLE/IMG_0001.MOV', 'first');
    await put('in/teal/101APPLE/img_0001.mov', 'other');
    expect((await bring('in')).copied).toEqual(['Teal/IMG_0001.MOV', 'Teal/also 2/img_0001.mov']);
  });

  test('goes on in the folder that the squad has already', async () => {
    await put('lesson/clips/TABLET 1/IMG_0001.MOV', 'first');
    await put('in/teal/IMG_0002.MOV', 'second');
    expect((await bring('in')).copied).toEqual(['TABLET 1/IMG_0002.MOV']);
  });

  test('keeps the same clip for each squad that hands it in', async () => {
    await put('in/teal/a.mov', 'same');
    await put('in/plum/a.mov', 'same');
    expect((await bring('in')).copied).toEqual(expect.arrayContaining(['Teal/a.mov', 'Plum/a.mov']));
  });

  test('takes one squad’s folder by its own name, and lets what names nobody wait', async () => {
    await put('Plum/a.mov', 'a');
    await put('holiday/b.mov', 'b');
    const { copied, problems } = await bring('Plum', 'holiday');
    expect(copied).toEqual(['Plum/a.mov']);
    expect(problems).toMatchObject([{ code: 'clip-of-nobody', reason: 'no-squad-named' }]);
  });

  test('leaves nothing half copied where the folder may not be written', async () => {
    await put('in/teal/a.mov', 'a');
    await put('lesson/clips/Teal/z.mov', 'z');
    await chmod(path.join(clips, 'Teal'), 0o500);
    const brought = await bring('in');
    await chmod(path.join(clips, 'Teal'), 0o700);
    const isRoot = process.getuid?.() === 0;
    expect(brought.copied).toEqual(isRoot ? ['Teal/a.mov'] : []);
    if (!isRoot) expect(brought.problems).toMatchObject([{ code: 'not-writable' }]);
    expect((await readdir(path.join(clips, 'Teal'))).filter((name) => name.endsWith('.tmp'))).toEqual([]);
  });

  test('says where a folder has no clip in it', async () => {
    await put('empty/notes.txt', 'no film');
    expect((await bring('empty', 'gone')).problems).toMatchObject([
      { code: 'path-missing', path: path.join(root, 'gone') },
      { code: 'folder-without-clips', path: path.join(root, 'empty') },
    ]);
  });

  test('names what cannot be read, and brings the rest', async () => {
    await put('in/teal/a.mov', 'aaaa');
    await put('in/teal/b.mov', 'bbbb');
    await put('in/teal/c.mov', 'cc');
    await put('in/teal/d.mov', 'ddd');
    const sources = await listSources([path.join(root, 'in')]);
    // Gone since it was listed: one that has to be compared, and one that is copied at once.
    for (const name of ['a.mov', 'c.mov']) await rm(path.join(root, 'in/teal', name));
    const { signal } = new AbortController();
    const ports = await openBringPorts(clips, signal);
    const job = { signal, onProgress: () => {} };
    expect(await bringClips(sources, await listFiles(clips), { plan, ports, job })).toEqual({
      copied: ['Teal/b.mov', 'Teal/d.mov'],
      alreadyThere: 0,
      problems: ['a.mov', 'c.mov'].map((name) => ({
        code: 'file-unreadable',
        path: path.join(root, 'in/teal', name),
      })),
    });
    expect(await snapshot()).toEqual({ 'Teal/b.mov': 'bbbb', 'Teal/d.mov': 'ddd' });
  });

  test('copies nothing where the disk has no room for all', async () => {
    await put('in/teal/a.mov', 'a'.repeat(100));
    const ports = {
      ...(await openBringPorts(clips, new AbortController().signal)),
      freeBytes: async () => 99,
    };
    const job = { signal: new AbortController().signal, onProgress: () => {} };
    const sources = await listSources([path.join(root, 'in')]);
    const brought = await bringClips(sources, await listFiles(clips), { plan, ports, job });
    expect(brought).toEqual({
      copied: [],
      alreadyThere: 0,
      problems: [{ code: 'disk-too-small', neededBytes: 100, freeBytes: 99 }],
    });
    expect(await snapshot()).toEqual({});
  });
});
