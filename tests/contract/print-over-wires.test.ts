import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { getWire } from './open-over.ts';
import { openTestDesk, WIRES } from './open-wires.ts';

/** The small lesson opened over a wire; its clips are not read, for printing needs none. */
async function open(wire: string) {
  const test = await openTestDesk();
  const client = await getWire(wire)(test.desk);
  const opened = await client.request('openLesson', {
    folder: test.desk.tokens.hand(test.lessonFolder).token,
  });
  if (!opened.ok || opened.value.update.kind !== 'whole') throw new Error(JSON.stringify(opened));
  return { test, client, lesson: opened.value.update.view.lesson };
}

const ORDER = { parts: ['squads', 'labels'] as ('squads' | 'labels')[], paper: 'a4' as const, isGrey: false };

describe.each(Object.keys(WIRES))('%s', (wire) => {
  test('the print pack is written into the lesson, a file a part, and not over what is there unasked', async () => {
    const { client, lesson, test: desk } = await open(wire);
    const print = (replace: boolean) =>
      client.request('printPack', { lesson, ...ORDER, into: null, replace });
    const reply = await print(false);
    const folder = path.join(desk.lessonFolder, 'print');
    const files = ['squad-sheets.pdf', 'tablet-labels.pdf'].map((name) => path.join(folder, name));
    expect(reply).toMatchObject({ ok: true, value: { paths: files, pageCount: 3 }, problems: [] });
    for (const file of files) expect((await readFile(file)).subarray(0, 5).toString()).toBe('%PDF-');
    await writeFile(files[1] ?? '', 'the teacher’s own');
    expect(await print(false)).toEqual({ ok: false, problems: [{ code: 'file-exists', path: files[0] }] });
    expect(await readFile(files[1] ?? '', 'utf8')).toBe('the teacher’s own');
    expect((await print(true)).ok).toBe(true);
    expect((await readFile(files[1] ?? '')).subarray(0, 5).toString()).toBe('%PDF-');
  });

  test('the pack goes into a folder that the teacher chose, but never among the clips', async () => {
    const { client, lesson, test: desk } = await open(wire);
    const chosen = path.join(desk.parent, 'out');
    await mkdir(chosen);
    const print = (into: string) =>
      client.request('printPack', { lesson, ...ORDER, parts: ['squads'], into, replace: false });
    expect(await print(desk.desk.tokens.hand(chosen).token)).toMatchObject({ ok: true });
    expect(await readdir(chosen)).toEqual(['squad-sheets.pdf']);
    const clips = path.join(desk.lessonFolder, 'clips');
    expect(await print(desk.desk.tokens.hand(clips).token)).toMatchObject({
      ok: false,
      problems: [{ code: 'file-name-bad' }],
    });
    expect(await print('nobody-handed-this-out')).toMatchObject({ ok: false });
  });
});
