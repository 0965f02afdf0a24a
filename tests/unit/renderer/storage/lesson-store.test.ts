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

describe('a lesson in a window', () => {
  test('shows a decision before anybody has acknowledged it, and keeps what did not change', async () => {
    const { store, weather } = open();
    await store.start();
    weather.now = 'cut';
    const before = store.getState().view;
    const safe = store.decide([care(2)]);
    expect(careOf(store)).toBe(2);
    expect(store.getState().waiting).toBe(1);
    expect(store.getState().view?.clips[0]).toBe(before?.clips[0]);
    expect(store.getState().view?.journal.undoes).toEqual(care(2));
    await safe;
    weather.now = 'fair';
    await store.settle();
    expect(store.getState().waiting).toBe(0);
    expect(careOf(store)).toBe(2);
    store.stop();
  });

  test('is as far as an answer that does not follow on what is here, once it was taken', async () => {
    const [here, other] = [open(), open()];
    await Promise.all([here.store.start(), other.store.start()]);
    here.weather.now = 'cut';
    await other.store.decide([care(0, 'amber')]);
    await other.store.settle();
    here.weather.now = 'fair';
    const from = other.store.getSince() ?? 0;
    expect(here.store.getSince()).toBeLessThan(from);
    const patch = { lesson: desk.lesson, from, to: from + 1, parts: {}, lists: {} };
    await here.store.take({ kind: 'patch', patch });
    expect(here.store.getSince()).toBe(from);
    here.store.stop();
    other.store.stop();
  });

  test('shows what the host will show: marks, sums and flags agree after every kind of decision', async () => {
    const { store, weather } = open();
    await store.start();
    const view = store.getState().view;
    const clip = view?.clips.find(({ criteria }) => criteria !== null);
    weather.now = 'cut';
    void store.decide([
      { kind: 'clip-confirmed', clip: clip?.id ?? '', answers: { place: true, together: true } },
      { kind: 'clip-noted', clip: clip?.id ?? '', text: 'Well done' },
      care(1, 'amber'),
      { kind: 'attendance-set', pupil: 'k-1', attendance: 'late', arrived: '10:01' },
      {
        kind: 'points-overridden',
        of: { type: 'pupil', pupil: 'k-2' },
        change: { type: 'by', points: 1 },
        reason: 'carried the mats',
      },
    ]);
    const painted = store.getState().view;
    expect(painted).not.toEqual(view);
    weather.now = 'fair';
    await store.settle();
    const told = store.getState().view;
    expect(painted?.clips).toEqual(told?.clips);
    expect(painted?.squadScores).toEqual(told?.squadScores);
    expect(painted?.pupilScores).toEqual(told?.pupilScores);
    expect(painted?.flags).toEqual(told?.flags);
    store.stop();
  });

  test('sends in the order decided, once the host answers again', async () => {
    const { store, weather, reconnect } = open();
    await store.start();
    const before = await countEvents();
    weather.now = 'cut';
    for (const points of [0, 1, 2, 0, 1]) await store.decide([care(points)]);
    await until(() => store.getState().contact === 'away');
    reconnect();
    await until(() => store.getState().waiting === 0);
    const sent = (await desk.readJournal()).slice(before).map(({ what }) => what.points);
    expect(sent).toEqual([0, 1, 2, 0, 1]);
    await until(() => store.getState().contact === 'here');
    store.stop();
  });

  test('records nothing twice where the reply was lost', async () => {
    const { store, weather, reconnect } = open();
    await store.start();
    const before = await countEvents();
    weather.now = 'reply-lost';
    await store.decide([care(2), care(0)]);
    await until(() => store.getState().contact === 'away');
    expect(await countEvents()).toBe(before + 2);
    reconnect();
    await until(() => store.getState().waiting === 0);
    expect(await countEvents()).toBe(before + 2);
    expect(careOf(store)).toBe(0);
    store.stop();
  });

  test('loses nothing when the page dies between the page’s disk and the host', async () => {
    const dying = open();
    await dying.store.start();
    const before = await countEvents();
    dying.weather.now = 'cut';
    await dying.store.decide([care(1), care(2)]);
    dying.store.stop();
    expect(await countEvents()).toBe(before);

    const next = open();
    await next.store.start();
    expect(await countEvents()).toBe(before + 2);
    expect(careOf(next.store)).toBe(2);
    next.store.stop();

    const after = open();
    await after.store.start();
    expect(await countEvents()).toBe(before + 2);
    after.store.stop();
  });

  test('goes on with a host that was started anew', async () => {
    const { store } = open();
    await store.start();
    store.stop();
    await desk.restart();
    const next = open();
    await next.store.start();
    await next.store.decide([care(0)]);
    await next.store.settle();
    expect(next.store.getState().waiting).toBe(0);
    expect(next.store.getState().view?.journal.undoes).toEqual(care(0));
    next.store.stop();
    await desk.reread();
  });

  test('has what it showed last at once, before the host has answered', async () => {
    const first = open();
    await first.store.start();
    first.store.stop();
    const next = open();
    next.weather.now = 'cut';
    await next.store.start();
    expect(next.store.getState().view?.plan.lesson.title).toBe('Small circuit');
    expect(next.store.getState().contact).toBe('away');
    next.store.stop();
  });
});

describe('undo and redo', () => {
  test('go back through decisions that still wait, without the host', async () => {
    const { store, weather, reconnect } = open();
    await store.start();
    await store.decide([care(0)]);
    await store.settle();
    weather.now = 'cut';
    await store.decide([care(1)]);
    await store.decide([care(2)]);
    await store.undo();
    expect(careOf(store)).toBe(1);
    await store.undo();
    expect(careOf(store)).toBe(0);
    await store.redo();
    expect(careOf(store)).toBe(1);
    reconnect();
    await until(() => store.getState().waiting === 0);
    expect(careOf(store)).toBe(1);
    store.stop();
  });

  test('reach decisions of before the page was opened', async () => {
    const first = open();
    await first.store.start();
    await first.store.decide([care(1)]);
    await first.store.decide([care(2)]);
    await first.store.settle();
    first.store.stop();
    const { store } = open();
    await store.start();
    await store.undo();
    await store.settle();
    expect(careOf(store)).toBe(1);
    await store.redo();
    await store.settle();
    expect(careOf(store)).toBe(2);
    store.stop();
  });

  test('taken twice at one go take two decisions back', async () => {
    const { store } = open();
    await store.start();
    await store.decide([care(0)]);
    await store.decide([care(1)]);
    await store.decide([care(2)]);
    await store.settle();
    await Promise.all([store.undo(), store.undo()]);
    await store.settle();
    expect(careOf(store)).toBe(0);
    store.stop();
  });

  test('ask for nothing where nothing was decided', async () => {
    const { store } = open();
    await store.start();
    while (store.getState().view?.journal.undoTarget) {
      await store.undo();
      await store.settle();
    }
    const before = await countEvents();
    await store.undo();
    await store.settle();
    expect(await countEvents()).toBe(before);
    expect(store.getState().refused).toEqual([]);
    store.stop();
  });
});

describe('two windows on one lesson', () => {
  test('see each other’s decisions, recorded or not', async () => {
    const one = open();
    const other = open();
    await Promise.all([one.store.start(), other.store.start()]);
    await one.store.decide([care(2)]);
    await until(() => careOf(other.store) === 2);
    await other.store.decide([care(1)]);
    await until(() => careOf(one.store) === 1);
    one.weather.now = 'cut';
    other.weather.now = 'cut';
    await one.store.decide([care(0)]);
    await until(() => careOf(other.store) === 0);
    one.reconnect();
    other.reconnect();
    await until(() => one.store.getState().waiting === 0 && other.store.getState().waiting === 0);
    expect(careOf(one.store)).toBe(0);
    expect(careOf(other.store)).toBe(0);
    one.store.stop();
    other.store.stop();
  });

  test('leave no event out and none twice when both decide at once', async () => {
    const one = open();
    const other = open();
    await Promise.all([one.store.start(), other.store.start()]);
    const before = await countEvents();
    const acts = Array.from({ length: 10 }, (_, at) => care(at % 3));
    await Promise.all(acts.flatMap((act) => [one.store.decide([act]), other.store.decide([act])]));
    await until(() => one.store.getState().waiting === 0 && other.store.getState().waiting === 0);
    const events = (await desk.readJournal()).slice(before);
    expect(events).toHaveLength(20);
    expect(new Set(events.map(({ id }) => id)).size).toBe(20);
    await until(() => careOf(one.store) === careOf(other.store));
    one.store.stop();
    other.store.stop();
  });
});

describe('a decision that can never be recorded', () => {
  test('is told and taken out, and the others go on', async () => {
    const { store, weather, reconnect } = open();
    await store.start();
    weather.now = 'cut';
    await store.decide([care(1), care(2, 'nobody'), care(2)]);
    reconnect();
    await until(() => store.getState().waiting === 0);
    expect(store.getState().refused).toMatchObject([{ code: 'decision-meaningless' }]);
    expect(careOf(store)).toBe(2);
    store.dismissRefused();
    expect(store.getState().refused).toEqual([]);
    store.stop();
  });
});
