import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { openCardCache } from '../../../src-core/host/card-cache.ts';
import { makeTemporaryFolder } from './temporary-folder.ts';

const found = { readings: [{ text: 'RM1/S/PIER/A/1', atSeconds: 0.4 }], problems: [] };

const openCache = () => {
  const folder = path.join(makeTemporaryFolder(), 'evidence');
  return { folder, cache: openCardCache(folder), file: path.join(folder, '7c1e.cards.json') };
};

describe('the cache of codes', () => {
  test('gives back what was kept, by content', async () => {
    const { cache, folder } = openCache();
    expect(await cache.read('7c1e')).toBeNull();
    await cache.write('7c1e', found);
    expect(await cache.read('7c1e')).toEqual(found);
    expect(await cache.read('0000')).toBeNull();
    expect(readdirSync(folder)).toEqual(['7c1e.cards.json']);
  });

  test('may be deleted at any time', async () => {
    const { cache, folder } = openCache();
    await cache.write('7c1e', found);
    rmSync(folder, { recursive: true });
    expect(await cache.read('7c1e')).toBeNull();
    await cache.write('7c1e', found);
    expect(await cache.read('7c1e')).toEqual(found);
  });

  test('does not believe an entry that is damaged, cut off, or of another analyser', async () => {
    const { cache, file } = openCache();
    await cache.write('7c1e', found);
    const sound = readFileSync(file, 'utf8');
    const other = sound.replace('"analyser":1', '"analyser":2');
    for (const text of [
      '',
      sound.slice(0, -9),
      other,
      '[]',
      '{"analyser":1,"readings":[{"text":1}],"problems":[]}',
    ]) {
      writeFileSync(file, text);
      expect(await cache.read('7c1e'), text).toBeNull();
    }
  });

  test('does not mind what an interrupted write left beside it', async () => {
    const { cache, folder } = openCache();
    mkdirSync(folder, { recursive: true });
    writeFileSync(path.join(folder, '.routemark-1-abc.tmp'), '{"analyser"');
    await cache.write('7c1e', found);
    expect(await cache.read('7c1e')).toEqual(found);
  });

  test('keeps no failure that may not come again', async () => {
    const { cache } = openCache();
    await cache.write('a', { readings: [], problems: [{ code: 'ffmpeg-missing', tried: [] }] });
    await cache.write('b', { readings: [], problems: [{ code: 'decode-cancelled' }] });
    await cache.write('c', { readings: [], problems: [{ code: 'decode-timed-out', limitSeconds: 60 }] });
    expect([await cache.read('a'), await cache.read('b'), await cache.read('c')]).toEqual([null, null, null]);
  });

  test('never fails, even with a file where its folder should be', async () => {
    const { cache, folder } = openCache();
    writeFileSync(folder, 'notes');
    await cache.write('7c1e', found);
    expect(await cache.read('7c1e')).toBeNull();
  });
});
