import { mkdir, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { describe, expect, test } from 'vitest';
import { draftSheet } from '../../src-core/app/export-sheet.ts';
import { gradeLesson } from '../../src-core/app/grade-lesson.ts';
import { openLesson } from '../../src-core/app/open-lesson.ts';
import type { DeskEvent } from '../../src-core/contract/events.ts';
import type { LessonUpdate } from '../../src-core/contract/lesson-update.ts';
import { openLessonPorts } from '../../src-core/host/lesson-ports.ts';
import { decide, follow, getWire, openOver, who } from './open-over.ts';
import { openTestDesk, WIRES } from './open-wires.ts';

describe.each(Object.keys(WIRES))('%s', (wire) => {
  test('a sheet is written as previewed, byte for byte what the command line’s own steps give', async () => {
    const open = await openOver(wire);
    const { lesson } = open.view;
    for (const { id } of open.view.clips)
      await decide(open, { kind: 'clip-confirmed', clip: id, answers: { place: true, together: true } });
    const order = { lesson, what: { kind: 'csv', columns: null }, evenWithOpenFlags: false } as const;
    const draft = await open.client.request('draftHandIn', order);
    const preview = draft.ok ? draft.value.preview : null;
    if (!draft.ok || !draft.value.draft || preview?.kind !== 'csv') throw new Error(JSON.stringify(draft));
    const { draft: seen, fileName } = draft.value;
    const { text } = preview;
    const written = await open.client.request('writeHandIn', {
      ...order,
      since: null,
      who,
      draft: seen,
      into: null,
      fileName,
      replace: false,
    });
    if (!written.ok) throw new Error(JSON.stringify(written.problems));
    expect(await readFile(written.value.path, 'utf8')).toBe(text);
    const ports = openLessonPorts({ folder: open.test.lessonFolder, signal: new AbortController().signal });
    const files = await openLesson(ports);
    if (!files.ok) throw new Error('the lesson opens');
    const job = { signal: new AbortController().signal, onProgress: () => {} };
    const graded = await gradeLesson(ports, files.value, job);
    expect(draftSheet(graded, { columns: null, evenWithOpenFlags: false }).text).toBe(text);
    const again = await open.client.request('writeHandIn', {
      ...order,
      since: null,
      who,
      draft: seen,
      into: null,
      fileName,
      replace: false,
    });
    expect(again).toMatchObject({ ok: false, problems: [{ code: 'file-exists' }] });
    await decide(open, { kind: 'attendance-set', pupil: 'k-1', attendance: 'absent', arrived: null });
    const stale = await open.client.request('writeHandIn', {
      ...order,
      since: null,
      who,
      draft: seen,
      into: null,
      fileName,
      replace: true,
    });
    expect(stale).toEqual({ ok: false, problems: [{ code: 'sheet-changed' }] });
  });

  test.each(['../sheet.csv', 'a/b.csv', 'CON:.csv', '..', 'sheet.'])(
    'a sheet is not called “%s”',
    async (fileName) => {
      const open = await openOver(wire);
      const what = { kind: 'csv', columns: null } as const;
      const order = { lesson: open.view.lesson, what, evenWithOpenFlags: true };
      const draft = await open.client.request('draftHandIn', order);
      const seen = (draft.ok && draft.value.draft) || '';
      const reply = await open.client.request('writeHandIn', {
        ...order,
        since: null,
        who,
        draft: seen,
        into: null,
        fileName,
        replace: true,
      });
      expect(reply).toEqual({ ok: false, problems: [{ code: 'file-name-bad', path: fileName }] });
    },
  );

  test('folders are walked by tokens, and a token that nobody handed out leads nowhere', async () => {
    const { client, test: desk } = await openOver(wire);
    const places = await client.request('listFolders', { folder: null });
    expect(places.ok && places.value.folders.length).toBeGreaterThan(0);
    const { token } = desk.desk.tokens.hand(desk.parent);
    const inside = await client.request('listFolders', { folder: token });
    const found = inside.ok ? inside.value.folders.find(({ name }) => name === 'lesson') : undefined;
    expect(found).toMatchObject({ isLesson: true });
    const gone = desk.desk.tokens.hand(path.join(desk.parent, 'pulled out'));
    expect(await client.request('listFolders', { folder: gone.token })).toEqual({
      ok: false,
      problems: [{ code: 'folder-unreadable', path: gone.path }],
    });
    const guess = await client.request('listFolders', { folder: `f-${'0'.repeat(32)}` });
    expect(guess).toEqual({ ok: false, problems: [{ code: 'folder-unknown' }] });
    expect(await client.request('chooseFolders', { purpose: 'lesson' })).toMatchObject({
      problems: [{ code: 'no-folder-dialog' }],
    });
  });

  test('clips are brought in from a folder, each content once', async () => {
    const { client, view, test: desk } = await openOver(wire);
    const tablet = path.join(desk.parent, 'tablet');
    await mkdir(path.join(tablet, 'teal'), { recursive: true });
    const film = await readFile(path.join(desk.lessonFolder, 'clips', 'teal', 'IMG_1000.MP4'));
    await writeFile(path.join(tablet, 'teal', 'IMG_1000.MP4'), film);
    await writeFile(path.join(tablet, 'teal', 'IMG_1009.MP4'), Buffer.concat([film, film.subarray(-16)]));
    const { token } = desk.desk.tokens.hand(tablet);
    const brought = await client.request('bringClips', { lesson: view.lesson, from: [token] });
    expect(brought).toMatchObject({ ok: true, value: { copied: ['teal/IMG_1009.MP4'], alreadyThere: 1 } });
  });

  test('the demo lesson is one call away, and the lesson is known the next time', async () => {
    const { client } = await openOver(wire);
    const demo = await client.request('openDemo', {});
    expect(demo.ok && demo.value.update.kind).toBe('whole');
    const desk = await client.request('readDesk', {});
    expect(desk.ok && desk.value.lessons.map(({ title }) => title)).toEqual([
      'Small circuit',
      'Small circuit',
    ]);
    expect(desk.ok && desk.value.lessons[0]?.path).toMatch(/demo-lesson$/);
  });

  test('reading that is cancelled says so, and can be taken up again', async () => {
    const test = await openTestDesk();
    await rm(path.join(test.lessonFolder, 'evidence'), { recursive: true });
    const client = await getWire(wire)(test.desk);
    const opened = await client.request('openLesson', {
      folder: test.desk.tokens.hand(test.lessonFolder).token,
    });
    const { lesson } = follow(null, (opened.ok && opened.value.update) as LessonUpdate);
    const stop = new AbortController();
    const reply = await client.request(
      'readClips',
      { lesson, since: null },
      { signal: stop.signal, onProgress: () => stop.abort() },
    );
    expect(reply).toEqual({ ok: false, problems: [{ code: 'call-cancelled' }] });
    const again = await client.request('readClips', { lesson, since: null });
    expect(again.ok && again.value.update).toMatchObject({ view: { reading: { state: 'read', total: 6 } } });
  });

  test('a film is made for windows that cannot decode the clip, once', async () => {
    const { client, view, test: desk } = await openOver(wire);
    const clip = view.clips[0]?.id ?? '';
    for (const _ of [1, 2]) {
      expect(await client.request('prepareProxy', { lesson: view.lesson, clip })).toMatchObject({ ok: true });
    }
    expect(await readdir(path.join(desk.lessonFolder, 'evidence', 'proxies'))).toEqual([`${clip}.v1.mp4`]);
    const none = await client.request('prepareProxy', { lesson: view.lesson, clip: '0'.repeat(16) });
    expect(none).toMatchObject({ ok: false, problems: [{ code: 'clip-unknown' }] });
  });
});

test('a second desk is sent to the first, which is asked to show itself', async () => {
  const test = await openTestDesk();
  const other = await openTestDesk();
  const asked: DeskEvent[] = [];
  test.desk.subscribe((event) => asked.push(event));
  const first = await test.desk.lessons.openFolder(test.lessonFolder);
  const second = await other.desk.lessons.openFolder(test.lessonFolder);
  const lesson = first.ok ? first.value.lesson : '';
  expect(second).toEqual({ ok: false, problems: [{ code: 'lesson-open-elsewhere', lesson }] });
  expect(asked).toContainEqual({ kind: 'lesson-asked', lesson });
  await sleep(0);
  test.desk.lessons.closeAll();
  expect((await other.desk.lessons.openFolder(test.lessonFolder)).ok).toBe(true);
});
