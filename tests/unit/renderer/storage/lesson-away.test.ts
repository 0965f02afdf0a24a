import { existsSync } from 'node:fs';
import { mkdir, readdir, rename, rmdir } from 'node:fs/promises';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { LessonStore } from '../../../../renderer/storage/lesson-store.ts';
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
