import { linkSync, mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { compareTablet } from '../../../src-core/host/compare-tablet.ts';
import { makeTemporaryFolder } from './temporary-folder.ts';

const { signal } = new AbortController();
const film = (fill: number) => Buffer.alloc(200_000, fill);

function makeFolders() {
  const [tablet, clips] = [makeTemporaryFolder(), makeTemporaryFolder()];
  mkdirSync(path.join(tablet, 'DCIM'));
  return { tablet, clips };
}

const paths = (files: readonly { readonly path: string }[]) => files.map((file) => file.path);

describe('a tablet beside a lesson', () => {
  test('may let go what the lesson has, under whatever name, and nothing else', async () => {
    const { tablet, clips } = makeFolders();
    writeFileSync(path.join(tablet, 'DCIM/IMG_0001.MOV'), film(1));
    writeFileSync(path.join(tablet, 'DCIM/IMG_0002.MOV'), film(2));
    writeFileSync(path.join(clips, 'renamed.mov'), film(1));
    const found = await compareTablet(tablet, clips, { signal });
    expect([paths(found.safe), paths(found.missing)]).toEqual([['DCIM/IMG_0001.MOV'], ['DCIM/IMG_0002.MOV']]);
  });

  test('must keep a film that differs in one byte between the samples of a quick look', async () => {
    const { tablet, clips } = makeFolders();
    const other = film(1);
    other[30_000] = 9;
    writeFileSync(path.join(tablet, 'DCIM/IMG_0001.MOV'), film(1));
    writeFileSync(path.join(clips, 'IMG_0001.MOV'), other);
    expect(paths((await compareTablet(tablet, clips, { signal })).missing)).toEqual(['DCIM/IMG_0001.MOV']);
  });

  test('is never the lesson itself: a file is no copy of itself, by its path or by a second name', async () => {
    const { tablet, clips } = makeFolders();
    writeFileSync(path.join(clips, 'only.mov'), film(1));
    linkSync(path.join(clips, 'only.mov'), path.join(tablet, 'DCIM/only.mov'));
    expect((await compareTablet(clips, clips, { signal })).safe).toEqual([]);
    expect((await compareTablet(tablet, clips, { signal })).safe).toEqual([]);
    // Nor is one of two equal clips of the lesson vouched for by the other.
    writeFileSync(path.join(clips, 'again.mov'), film(1));
    expect((await compareTablet(clips, clips, { signal })).safe).toEqual([]);
  });

  test('that is not there is told', async () => {
    const { tablet, clips } = makeFolders();
    const found = await compareTablet(path.join(tablet, 'gone'), clips, { signal });
    expect(found.problems).toMatchObject([{ code: 'path-missing' }]);
  });
});
