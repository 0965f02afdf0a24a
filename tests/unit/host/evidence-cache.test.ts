import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import * as z from 'zod';
import { isLasting } from '../../../src-core/evidence/evidence-problem.ts';
import { cardsAnalyser, motionAnalyser, stillsAnalyser } from '../../../src-core/host/analysers.ts';
import { defineJsonAnalyser, openEvidenceCache } from '../../../src-core/host/evidence-cache.ts';
import { makeTemporaryFolder } from './temporary-folder.ts';

const found = {
  readings: [{ text: 'RM1/S/PIER/A/1', atSeconds: 0.4 }],
  problems: [],
  how: 'searched' as const,
};

const openCache = () => {
  const folder = path.join(makeTemporaryFolder(), 'evidence');
  return { folder, cache: openEvidenceCache(folder), file: path.join(folder, '7c1e.cards.json') };
};

describe('the cache of evidence', () => {
  test('gives back what was kept, by content and analyser', async () => {
    const { cache, folder } = openCache();
    expect(await cache.read('7c1e', cardsAnalyser)).toBeNull();
    await cache.write('7c1e', cardsAnalyser, found);
    expect(await cache.read('7c1e', cardsAnalyser)).toEqual(found);
    expect(await cache.read('0000', cardsAnalyser)).toBeNull();
    expect(await cache.read('7c1e', stillsAnalyser)).toBeNull();
    expect(await cache.has('7c1e', cardsAnalyser)).toBe(true);
    expect(await cache.has('7c1e', stillsAnalyser)).toBe(false);
    expect(readdirSync(folder)).toEqual(['7c1e.cards.json']);
  });

  test('may be deleted at any time', async () => {
    const { cache, folder } = openCache();
    await cache.write('7c1e', cardsAnalyser, found);
    rmSync(folder, { recursive: true });
    expect(await cache.read('7c1e', cardsAnalyser)).toBeNull();
    await cache.write('7c1e', cardsAnalyser, found);
    expect(await cache.read('7c1e', cardsAnalyser)).toEqual(found);
  });

  test('does not believe an entry that is damaged, cut off, or of another version', async () => {
    const { cache, file } = openCache();
    await cache.write('7c1e', cardsAnalyser, found);
    const sound = readFileSync(file, 'utf8');
    const other = sound.replace(`"analyser":${cardsAnalyser.version}`, '"analyser":1');
    expect(other).not.toBe(sound);
    const wrong = `{"analyser":${cardsAnalyser.version},"value":{"readings":[{"text":1}],"problems":[]}}`;
    for (const text of ['', sound.slice(0, -9), other, '[]', 'null', wrong]) {
      writeFileSync(file, text);
      expect(await cache.read('7c1e', cardsAnalyser), text).toBeNull();
    }
  });

  test('forgets one analyser’s entries when that analyser changes, and no other’s', async () => {
    const { cache } = openCache();
    const define = (name: string, version: number) =>
      defineJsonAnalyser(name, version, z.strictObject({ seen: z.number() }));
    await cache.write('7c1e', define('one', 1), { seen: 1 });
    await cache.write('7c1e', define('two', 1), { seen: 2 });
    expect(await cache.read('7c1e', define('one', 2))).toBeNull();
    expect(await cache.read('7c1e', define('two', 1))).toEqual({ seen: 2 });
  });

  test('does not mind what an interrupted write left beside it', async () => {
    const { cache, folder } = openCache();
    mkdirSync(folder, { recursive: true });
    writeFileSync(path.join(folder, '.routemark-1-abc.tmp'), '{"analyser"');
    await cache.write('7c1e', cardsAnalyser, found);
    expect(await cache.read('7c1e', cardsAnalyser)).toEqual(found);
  });

  test('keeps no failure that may not come again', () => {
    expect(isLasting({ code: 'ffmpeg-missing', tried: [] })).toBe(false);
    expect(isLasting({ code: 'decode-cancelled' })).toBe(false);
    expect(isLasting({ code: 'decode-timed-out', limitSeconds: 60 })).toBe(false);
    expect(isLasting({ code: 'decode-cut-short', lastSeconds: 4, detail: '' })).toBe(true);
  });

  test('never fails, even with a file where its folder should be', async () => {
    const { cache, folder } = openCache();
    writeFileSync(folder, 'notes');
    await cache.write('7c1e', cardsAnalyser, found);
    expect(await cache.read('7c1e', cardsAnalyser)).toBeNull();
  });
});

describe('entries that are mostly bytes', () => {
  const stills = {
    stills: [
      { atSeconds: 0, jpeg: Uint8Array.from([255, 216, 10, 10, 0]) },
      { atSeconds: 0.067, jpeg: Uint8Array.from([255, 216]) },
    ],
  };

  test('come back to the byte, line ends within them included', async () => {
    const { cache } = openCache();
    await cache.write('7c1e', stillsAnalyser, stills);
    expect(await cache.read('7c1e', stillsAnalyser)).toEqual(stills);
  });

  test('hold a clip’s motion exactly', async () => {
    const { cache } = openCache();
    const motion = {
      ...{ rateHz: 15, fromSeconds: 0.4, width: 80, height: 45, columns: 2, rows: 1, frameCount: 2 },
      u: Float32Array.from([0, 0, 0.1, -3.25]),
      v: Float32Array.from([0, 0, 1e-9, 2]),
      fine: {
        ...{ columns: 1, rows: 4 },
        u: Float32Array.from([0, 0, 0, 0, 1, 2, 3, 4]),
        v: Float32Array.from([0, 0, 0, 0, -4, -3, -2, -1]),
      },
      camera: new Float32Array(8),
    };
    await cache.write('7c1e', motionAnalyser, motion);
    expect(await cache.read('7c1e', motionAnalyser)).toEqual(motion);
  });

  test('are not believed when cut off or grown', async () => {
    const { cache, folder } = openCache();
    await cache.write('7c1e', stillsAnalyser, stills);
    const file = path.join(folder, '7c1e.stills.bin');
    const sound = readFileSync(file);
    for (const bytes of [
      sound.subarray(0, -1),
      Buffer.concat([sound, Buffer.from([0])]),
      sound.subarray(0, 5),
    ]) {
      writeFileSync(file, bytes);
      expect(await cache.read('7c1e', stillsAnalyser)).toBeNull();
    }
  });
});
