import { rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { groupCopies } from '../../../src-core/app/group-copies.ts';
import { readFullHash, readSampleHash } from '../../../src-core/host/content-hash.ts';
import { openLessonPorts } from '../../../src-core/host/lesson-ports.ts';
import { makeTemporaryFolder } from '../host/temporary-folder.ts';

/** Large enough for gaps between the samples; a byte in a gap changes the content and not the fingerprint. */
const SIZE = 400_000;
const IN_A_GAP = 50_000;

function makeClips(contents: Readonly<Record<string, { readonly at?: number }>>) {
  const folder = makeTemporaryFolder();
  for (const [name, { at }] of Object.entries(contents)) {
    const bytes = new Uint8Array(SIZE);
    if (at !== undefined) bytes[at] = 1;
    writeFileSync(path.join(folder, name), bytes);
  }
  const { signal } = new AbortController();
  return { folder, ports: openLessonPorts({ folder, clipsFolder: folder, signal }) };
}

async function group({ ports }: ReturnType<typeof makeClips>, names: readonly string[], vanished = '') {
  const files = await Promise.all(
    names.map(async (name) => {
      const reading = await ports.readFile(name);
      if (!reading) throw new Error(`${name} is not there`);
      return { held: { squad: 'teal', file: { path: name, name, sizeBytes: SIZE, modifiedMs: 0 } }, reading };
    }),
  );
  const groups = await groupCopies(files, (file) =>
    file === vanished ? Promise.resolve(null) : ports.readFullHash(file),
  );
  return groups.map(({ id, copies }) => ({ id, names: copies.map(({ file }) => file.name) }));
}

describe('content hashes', () => {
  test('are alike for alike files alone, and the quick one sees size and samples', async () => {
    const { folder } = makeClips({ a: {}, b: {}, c: { at: 0 }, d: { at: SIZE - 1 }, e: { at: IN_A_GAP } });
    const quick = (name: string) => readSampleHash(path.join(folder, name));
    const full = (name: string) => readFullHash(path.join(folder, name));
    expect(await quick('a')).toMatch(/^[0-9a-f]{32}$/);
    expect(await quick('b')).toBe(await quick('a'));
    expect(await quick('c')).not.toBe(await quick('a'));
    expect(await quick('d')).not.toBe(await quick('a'));
    expect(await quick('e')).toBe(await quick('a'));
    expect(await full('e')).not.toBe(await full('a'));
    expect(await full('b')).toBe(await full('a'));
  });

  test('of an empty file and of one smaller than a sample are told too', async () => {
    const folder = makeTemporaryFolder();
    writeFileSync(path.join(folder, 'empty'), '');
    writeFileSync(path.join(folder, 'small'), 'x');
    const hashes = ['empty', 'small'].map((name) => readSampleHash(path.join(folder, name)));
    expect(new Set(await Promise.all(hashes)).size).toBe(2);
  });
});

describe('copies of one recording', () => {
  test('are one clip whatever their names', async () => {
    const clips = makeClips({ 'a.mov': {}, 'b.mov': {}, 'c.mov': { at: 0 } });
    const groups = await group(clips, ['a.mov', 'b.mov', 'c.mov']);
    expect(groups.map(({ names }) => names)).toEqual([['a.mov', 'b.mov'], ['c.mov']]);
    expect(groups[0]?.id).toMatch(/^[0-9a-f]{16}$/);
  });

  test('are not files that only look alike at a quick glance; their ids do not depend on their order', async () => {
    const clips = makeClips({ 'a.mov': {}, 'b.mov': { at: IN_A_GAP }, 'c.mov': {} });
    const byName = (groups: Awaited<ReturnType<typeof group>>) =>
      new Map(groups.flatMap(({ id, names }) => names.map((name) => [name, id])));
    const one = byName(await group(clips, ['a.mov', 'b.mov', 'c.mov']));
    expect(one.get('a.mov')).toBe(one.get('c.mov'));
    expect(new Set(one.values()).size).toBe(2);
    expect(byName(await group(clips, ['c.mov', 'b.mov', 'a.mov']))).toEqual(one);
  });

  test('cannot be told of a file that went away; it stands alone and takes nobody’s id', async () => {
    const clips = makeClips({ 'a.mov': {}, 'b.mov': {}, 'c.mov': {} });
    const groups = await group(clips, ['a.mov', 'b.mov', 'c.mov'], 'a.mov');
    expect(groups.map(({ names }) => names)).toEqual([['b.mov', 'c.mov'], ['a.mov']]);
    expect(groups[1]?.id).toBe(`${groups[0]?.id}-2`);
  });

  test('are not compared in full where the file is gone: the port says null', async () => {
    const { folder, ports } = makeClips({ 'a.mov': {} });
    rmSync(path.join(folder, 'a.mov'));
    expect(await ports.readFullHash('a.mov')).toBeNull();
    expect(await ports.readFile('a.mov')).toBeNull();
  });
});
