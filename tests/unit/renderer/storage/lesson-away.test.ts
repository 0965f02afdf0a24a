import { existsSync } from 'node:fs';
import { mkdir, readdir, readFile, rename, rmdir } from 'node:fs/promises';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { LessonStore } from '../../../../renderer/storage/lesson-store.ts';
import type { LessonSession } from '../../../../src-core/host/desk/lesson-session.ts';
import type { JournalAct } from '../../../../src-core/marking/journal-event.ts';
import { openDeskForWindows, openWindow, until } from './open-windows.ts';

let desk: Awaited<ReturnType<typeof openDeskForWindows>>;

beforeAll(async () => {
  desk = await openDeskForWindows();
});

afterAll(async () => {
  await desk.close();
  expect(desk.faults).toEqual([]);
});

const open = () => openWindow(desk.getDesk(), desk.lesson, desk.openStorage());

function careOf(store: LessonStore, squad = 'teal'): number | null | undefined {
  const score = store.getState().view?.squadScores.find((one) => one.squad === squad);
  return score?.criteria[0]?.decided;
}

const care = (points: number, squad = 'teal'): JournalAct => ({
  kind: 'squad-marked',
  squad,
  criterion: 'care',
  points,
});

const countEvents = async () => (await desk.readJournal()).length;

describe('a lesson whose stick is pulled out', () => {
  test('says so, keeps what is decided meanwhile, writes nothing in its place, and writes it when it is back', async () => {
    const { store } = open();
    await store.start();
    const before = await countEvents();
    const elsewhere = `${desk.folder} on a stick`;
    await rename(desk.folder, elsewhere);
    await store.decide([care(1)]);
    await store.decide([care(0, 'amber')]);
    await store.settle();
    const { held, waiting } = store.getState();
    expect(held).toMatchObject([{ code: 'lesson-away', path: desk.folder }]);
    expect(waiting).toBe(2);
    expect([careOf(store), careOf(store, 'amber')]).toEqual([1, 0]);
    expect(existsSync(desk.folder)).toBe(false);
    // A mount that stays without its disk is an empty folder.
    await mkdir(desk.folder);
    await store.settle();
    expect(await readdir(desk.folder)).toEqual([]);
    await rmdir(desk.folder);
    await rename(elsewhere, desk.folder);
    await store.settle();
    await until(() => store.getState().waiting === 0);
    expect(store.getState().held).toEqual([]);
    expect(await countEvents()).toBe(before + 2);
    expect(store.getState().view?.clips).toHaveLength(6);
    store.stop();
  });

  test('keeps its clips in view: a reading that finds no folder is refused', async () => {
    const elsewhere = `${desk.folder} on a stick`;
    await rename(desk.folder, elsewhere);
    expect(await desk.reread()).toMatchObject({ ok: false, problems: [{ code: 'lesson-away' }] });
    await rename(elsewhere, desk.folder);
    const again = await desk.reread();
    expect(again.ok && again.value.update).toMatchObject({ view: { clips: { length: 6 } } });
  });
});

describe('a second marking whose program was started anew', () => {
  test('is opened once, is known again, and gets what its window decided meanwhile', async () => {
    const getLesson = async () => (await desk.getDesk().lessons.find(desk.lesson)) as LessonSession;
    const first = await getLesson();
    const asked = await Promise.all(
      ['R. Skerry', 'R. Skerry'].map((who) => desk.getDesk().lessons.openSecond(first, who)),
    );
    const [second, again] = asked.map((opened) => (opened.ok ? opened.value : null));
    expect(second).toBe(again);
    const lesson = second?.lesson ?? '';
    const window = openWindow(desk.getDesk(), lesson, desk.openStorage());
    await window.store.start();
    const clip = (await getLesson()).getView().clips[0]?.id ?? '';
    window.weather.now = 'cut';
    // This marker's first word: nothing on the disk says yet that the marking was begun.
    await window.store.decide([{ kind: 'clip-noted', clip, text: 'late start' }]);
    window.store.stop();
    await desk.restart();
    const next = openWindow(desk.getDesk(), lesson, desk.openStorage());
    await next.store.start();
    await next.store.settle();
    const { waiting, contact, view } = next.store.getState();
    expect([waiting, contact, view?.second]).toEqual([0, 'here', { who: 'R. Skerry', of: desk.lesson }]);
    next.store.stop();
    const journal = await readFile(path.join(desk.folder, 'second-marks', 'r-skerry.jsonl'), 'utf8');
    expect(journal).toContain('late start');
  });
});
