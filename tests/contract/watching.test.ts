import { appendFile, readFile } from 'node:fs/promises';
import path from 'node:path';
import { ulid } from 'ulid';
import { describe, expect, test, vi } from 'vitest';
import type { Progress } from '../../src-core/contract/progress.ts';
import { decide, follow, type Open, openOver } from './open-over.ts';
import { WIRES } from './open-wires.ts';

const NOBODYS = { clip: '0'.repeat(16), isOpened: false };

/** Watches every clip, and follows the change. */
async function watch(open: Open): Promise<readonly Progress[]> {
  const told: Progress[] = [];
  const { lesson, revision: since } = open.view;
  const reply = await open.client.request(
    'watchClips',
    { lesson, since },
    { onProgress: (progress) => told.push(progress) },
  );
  if (!reply.ok) throw new Error(JSON.stringify(reply.problems));
  open.view = follow(open.view, reply.value.update);
  return told;
}

describe.each(Object.keys(WIRES))('%s', (wire) => {
  test('clips are watched in the background: stopped, gone on with, kept; decisions made meanwhile stand', async () => {
    const open = await openOver(wire);
    const { lesson } = open.view;
    const clip = open.view.clips[0]?.id ?? '';
    const unknown = await open.client.request('readEvidence', { ...NOBODYS, lesson });
    expect(unknown).toEqual({ ok: false, problems: [{ code: 'clip-unknown', clip: NOBODYS.clip }] });
    const before = await open.client.request('readEvidence', { lesson, clip, isOpened: true });
    expect(before).toMatchObject({ ok: true, value: { evidence: { clip, reps: null, unison: null } } });
    expect(open.view.clips.map(({ seen }) => seen.watched)).toEqual(Array(6).fill('no'));

    const controller = new AbortController();
    const stopped = open.client.request(
      'watchClips',
      { lesson, since: null },
      { signal: controller.signal, onProgress: ({ done }) => done > 0 && controller.abort() },
    );
    expect(await stopped).toEqual({ ok: false, problems: [{ code: 'call-cancelled' }] });

    const watching = watch(open);
    await decide(open, { kind: 'clip-noted', clip, text: 'while it is watched' });
    const told = await watching;
    expect(told[0]?.done).toBeGreaterThan(0);
    expect(told.at(-1)).toEqual({ step: 'watch', done: 6, total: 6 });
    expect(open.view.clips.map(({ seen }) => seen.watched)).toEqual(Array(6).fill('yes'));
    expect(open.view.clips.every(({ seen }) => seen.reps !== null)).toBe(true);
    expect(open.view.clips[0]?.note).toBe('while it is watched');
    expect(open.test.faults).toEqual([]);
    // What is drawn is no part of a change.
    expect(JSON.stringify(open.view.clips[0]).length).toBeLessThan(4000);

    const reply = await open.client.request('readEvidence', { lesson, clip, isOpened: true });
    if (!reply.ok) throw new Error(JSON.stringify(reply.problems));
    const { strip, reps } = reply.value.evidence;
    expect(strip.length).toBe(reps?.count ?? 12);
    const starts = strip.map(({ jpeg }) => Buffer.from(jpeg ?? '', 'base64').toString('hex', 0, 2));
    expect(new Set(starts)).toEqual(new Set(['ffd8']));
    expect(reps?.trace.signal.length).toBeGreaterThan(10);

    const again = await open.client.request('readClips', { lesson, since: null });
    if (again.ok) open.view = follow(null, again.value.update);
    expect(open.view.reading.state).toBe('read');
    expect(open.view.clips.map(({ seen }) => seen.watched)).toEqual(Array(6).fill('yes'));
  });
});

test('a change seen on the disk waits its turn behind a decision, so that neither shows a journal of before the other', async () => {
  const open = await openOver('in process');
  const session = await open.test.desk.lessons.find(open.view.lesson);
  if (!session) throw new Error('the lesson is open');
  await decide(open, { kind: 'clip-noted', clip: open.view.clips[0]?.id, text: 'here' });
  const file = path.join(open.test.lessonFolder, 'marks.jsonl');
  const [, line = ''] = (await readFile(file, 'utf8')).split('\n');
  const event = JSON.parse(line);
  let finish = () => {};
  // What the desk noticed of its own writing comes before; only then is it the turn of this.
  const writing = await new Promise<{ done: Promise<void> }>((begin) => {
    const done = session.inTurn(
      () =>
        new Promise<void>((resolve) => {
          finish = resolve;
          begin({ done });
        }),
    );
  });
  const other = {
    ...event,
    id: ulid(),
    at: '2999-01-01T00:00:00.000Z',
    what: { ...event.what, text: 'from elsewhere' },
  };
  await appendFile(file, `${JSON.stringify(other)}\n`);
  const refreshed = session.refresh();
  await new Promise((resolve) => setTimeout(resolve, 300));
  expect(session.getView().clips[0]?.note).toBe('here');
  finish();
  await Promise.all([writing.done, refreshed]);
  await vi.waitFor(() => expect(session.getView().clips[0]?.note).toBe('from elsewhere'));
});
