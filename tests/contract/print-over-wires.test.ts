import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { getWire, openOver, who } from './open-over.ts';
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

const SHEET = {
  kind: 'grade-sheet' as const,
  paper: 'a4' as const,
  isGrey: false,
  stills: 'left-out' as const,
  evenWithOpenFlags: false,
  into: null,
  fileName: 'grade-sheet.pdf',
  replace: false,
};

describe.each(Object.keys(WIRES))('%s', (wire) => {
  test('the print pack is written into the lesson, a file a part, and not over what is there unasked', async () => {
    const { client, lesson, test: desk } = await open(wire);
    const print = (replace: boolean) =>
      client.request('printPack', { lesson, ...ORDER, into: null, replace });
    const reply = await print(false);
    const folder = path.join(desk.lessonFolder, 'print');
    const files = ['squad-sheets.pdf', 'tablet-labels.pdf'].map((name) => path.join(folder, name));
    // Two sheets with the list that a squad without clues walks by, and one page of labels.
    expect(reply).toMatchObject({ ok: true, value: { paths: files, pageCount: 5 }, problems: [] });
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

  test('a grade sheet goes into the hand-in and the journal, slips into the hand-in alone', async () => {
    const { client, view, test: desk } = await openOver(wire);
    const { lesson, revision: since } = view;
    const print = (change: object) =>
      client.request('printSheet', { lesson, since, who, ...SHEET, ...change });
    const file = path.join(desk.lessonFolder, 'hand-in', SHEET.fileName);
    const reply = await print({});
    expect(reply).toMatchObject({ ok: true, value: { path: file, pageCount: 3 }, problems: [] });
    expect((await readFile(file)).subarray(0, 5).toString()).toBe('%PDF-');
    expect(await print({})).toEqual({ ok: false, problems: [{ code: 'file-exists', path: file }] });
    expect((await print({ kind: 'pupil-slips', fileName: 'slips.pdf' })).ok).toBe(true);
    expect(await readdir(path.dirname(file))).toEqual([SHEET.fileName, 'slips.pdf']);
    const session = await desk.desk.lessons.find(lesson);
    expect(session?.getEvents()).toMatchObject([
      { who, what: { kind: 'handed-in', files: [SHEET.fileName], unconfirmed: 2 } },
    ]);
    for (const fileName of ['../plan.json', 'clips/x.pdf']) {
      expect(await print({ fileName })).toEqual({
        ok: false,
        problems: [{ code: 'file-name-bad', path: fileName }],
      });
    }
  });

  test('no sheet is printed before the clips were read', async () => {
    const { client, lesson } = await open(wire);
    expect(await client.request('printSheet', { lesson, since: null, who, ...SHEET })).toEqual({
      ok: false,
      problems: [{ code: 'clips-unread' }],
    });
  });
});

test('stills of clips that were never watched are cut for the sheet', async () => {
  const [wire = ''] = Object.keys(WIRES);
  const { client, view, test: desk } = await openOver(wire);
  const order = { ...SHEET, stills: 'shown' as const };
  const reply = await client.request('printSheet', { lesson: view.lesson, since: null, who, ...order });
  expect(reply).toMatchObject({ ok: true, problems: [] });
  const bytes = await readFile(path.join(desk.lessonFolder, 'hand-in', SHEET.fileName), 'latin1');
  expect(bytes.match(/\/Subtype \/Image/g)).toHaveLength(6 * 6);
});
