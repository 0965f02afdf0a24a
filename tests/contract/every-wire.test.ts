import { appendFile, readFile } from 'node:fs/promises';
import path from 'node:path';
import { ulid } from 'ulid';
import { describe, expect, test, vi } from 'vitest';
import type { DeskEvent } from '../../src-core/contract/events.ts';
import { decide, follow, openOver, who } from './open-over.ts';
import { WIRES } from './open-wires.ts';

describe.each(Object.keys(WIRES))('%s', (wire) => {
  test('a lesson opens, its clips are read, and every clip stands in its slot', async () => {
    const { view, test: desk } = await openOver(wire);
    expect(view.reading).toEqual({ state: 'read', done: 6, total: 6 });
    expect(view.clips.map(({ squad, position, assignment }) => [squad, position, assignment?.slot])).toEqual(
      ['teal', 'amber'].flatMap((squad) => [0, 1, 2].map((slot) => [squad, slot, slot])),
    );
    expect(view.clips.every(({ isSearched, criteria }) => isSearched && criteria?.length === 2)).toBe(true);
    expect(view.clips[0]?.criteria?.[0]).toMatchObject({ criterion: 'place', shown: true, confirmed: false });
    expect(desk.faults).toEqual([]);
  });

  test('a decision is on the disk when it is acknowledged, changes what it is about, and nothing else', async () => {
    const open = await openOver(wire);
    const before = open.view;
    const [clip] = before.clips;
    const [id] = await decide(open, {
      kind: 'clip-confirmed',
      clip: clip?.id,
      answers: { place: true, together: true },
    });
    const journal = await readFile(path.join(open.test.lessonFolder, 'marks.jsonl'), 'utf8');
    expect(journal).toContain(id);
    expect(open.view.clips[0]).toMatchObject({ points: 1 });
    expect(open.view.clips[0]?.criteria?.every(({ confirmed }) => confirmed)).toBe(true);
    expect(open.view.clips.slice(1)).toEqual(before.clips.slice(1));
    expect(open.view.clips[1]).toBe(before.clips[1]);
    const whole = await open.client.request('readLesson', { lesson: before.lesson, since: null });
    expect(whole.ok && whole.value.update).toEqual({ kind: 'whole', view: open.view });
  });

  test('a decision sent again is acknowledged again and recorded once', async () => {
    const { client, view, test: desk } = await openOver(wire);
    const { lesson, revision: since } = view;
    const entries = [
      {
        id: ulid(),
        act: { kind: 'clip-noted' as const, clip: view.clips[0]?.id ?? '', text: 'well counted' },
      },
    ];
    for (const _ of [1, 2]) {
      const reply = await client.request('decide', { lesson, since, who, entries });
      expect(reply).toMatchObject({ ok: true, value: { acknowledged: [entries[0]?.id] } });
    }
    const journal = await readFile(path.join(desk.lessonFolder, 'marks.jsonl'), 'utf8');
    expect(journal.trim().split('\n')).toHaveLength(2);
  });

  test('undo and redo go through the journal, and say when there is nothing left', async () => {
    const open = await openOver(wire);
    const { lesson } = open.view;
    const clip = open.view.clips[0]?.id ?? '';
    await decide(open, { kind: 'clip-noted', clip, text: 'once more' });
    expect(open.view.journal.undoes).toMatchObject({ kind: 'clip-noted', text: 'once more' });
    for (const [name, text] of [
      ['undo', null],
      ['redo', 'once more'],
    ] as const) {
      const reply = await open.client.request(name, { lesson, since: open.view.revision, who, id: ulid() });
      if (reply.ok) open.view = follow(open.view, reply.value.update);
      expect(open.view.clips[0]?.note).toBe(text);
    }
    const more = await open.client.request('redo', { lesson, since: null, who, id: ulid() });
    expect(more).toEqual({ ok: false, problems: [{ code: 'nothing-to-redo' }] });
    const session = await open.test.desk.lessons.find(lesson);
    expect(
      session
        ?.getEvents()
        .map(({ what }) => what.kind)
        .slice(-2),
    ).toEqual(['undone', 'redone']);
  });

  test('a decision about what is not in the lesson is refused, and none of those sent with it recorded', async () => {
    const open = await openOver(wire);
    const { lesson } = open.view;
    const entries = [
      { id: ulid(), act: { kind: 'clip-noted' as const, clip: 'x', text: 'fine' } },
      {
        id: ulid(),
        act: {
          kind: 'attendance-set' as const,
          pupil: 'nobody',
          attendance: 'absent' as const,
          arrived: null,
        },
      },
    ];
    const reply = await open.client.request('decide', { lesson, since: null, who, entries });
    expect(reply).toEqual({ ok: false, problems: [{ code: 'decision-meaningless', path: 'pupil' }] });
    await expect(readFile(path.join(open.test.lessonFolder, 'marks.jsonl'))).rejects.toThrow();
  });

  test('what the command line decides reaches the window by itself', async () => {
    const open = await openOver(wire);
    const events: DeskEvent[] = [];
    open.client.subscribe((event) => events.push(event));
    await decide(open, { kind: 'clip-noted', clip: open.view.clips[0]?.id, text: 'here' });
    const file = path.join(open.test.lessonFolder, 'marks.jsonl');
    const [, line = ''] = (await readFile(file, 'utf8')).split('\n');
    const event = JSON.parse(line);
    const other = {
      ...event,
      id: ulid(),
      at: '2999-01-01T00:00:00.000Z',
      what: { ...event.what, text: 'from elsewhere' },
    };
    await appendFile(file, `${JSON.stringify(other)}\n`);
    await vi.waitFor(
      () =>
        expect(events.some((one) => one.kind === 'lesson-changed' && one.revision > open.view.revision)).toBe(
          true,
        ),
      { timeout: 10_000, interval: 20 },
    );
    const reply = await open.client.request('readLesson', {
      lesson: open.view.lesson,
      since: open.view.revision,
    });
    if (reply.ok) open.view = follow(open.view, reply.value.update);
    expect(open.view.clips[0]?.note).toBe('from elsewhere');
  });

  test('a plan is checked, written whole, and not over another edit', async () => {
    const open = await openOver(wire);
    const { lesson, plan, planVersion: base } = open.view;
    const tighter = { ...plan, tolerances: { ...plan.tolerances, shortestClipSeconds: 5 } };
    const saved = await open.client.request('savePlan', {
      lesson,
      since: open.view.revision,
      base,
      plan: tighter,
    });
    if (saved.ok) open.view = follow(open.view, saved.value.update);
    expect(open.view.plan.tolerances.shortestClipSeconds).toBe(5);
    expect(open.view.flags.map(({ flag }) => flag.code)).toEqual(Array(6).fill('too-short'));
    const late = await open.client.request('savePlan', { lesson, since: null, base, plan });
    expect(late).toEqual({ ok: false, problems: [{ code: 'plan-changed-elsewhere' }] });
    const odd = await open.client.request('checkPlan', { plan: { ...plan, stations: 'none' } });
    expect(odd.ok && odd.value.problems).toContainEqual(
      expect.objectContaining({ code: 'plan-field', path: 'stations' }),
    );
    const refused = await open.client.request('savePlan', {
      lesson,
      since: null,
      base: open.view.planVersion,
      plan: 7,
    });
    expect(refused.ok).toBe(false);
  });
});
