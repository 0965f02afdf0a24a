import { expect, test } from 'vitest';
import type { DeskEvent } from '../../../../src-core/contract/events.ts';
import type { FaceHost } from '../../../../src-core/host/desk/face.ts';
import { openPages } from '../../../../src-core/host/loopback/pages.ts';

function open() {
  const listeners = new Set<(event: DeskEvent) => void>();
  const host: FaceHost = {
    handlers: {} as FaceHost['handlers'],
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    onFault: () => {},
  };
  const tell = (event: DeskEvent) => {
    for (const listener of listeners) listener(event);
  };
  return { pages: openPages(host), tell, listeners };
}

const changed: DeskEvent = { kind: 'lesson-changed', lesson: 'x', revision: 1 };

const readAll = (stream: ReadableStream<Uint8Array>) => new Response(stream).text();

test('every page hears what concerns all, and its own progress alone', async () => {
  const { pages, tell } = open();
  const streams = ['one', 'two'].map((page) => readAll(pages.openStream(page)));
  tell(changed);
  pages.getFace('two').tell({ kind: 'reconnected' });
  pages.closeAll();
  const [one = '', two = ''] = await Promise.all(streams);
  expect([one.includes('lesson-changed'), one.includes('reconnected')]).toEqual([true, false]);
  expect([two.includes('lesson-changed'), two.includes('reconnected')]).toEqual([true, true]);
});

test('of many windows the oldest steps back, so that calls keep their connections', async () => {
  const { pages, tell } = open();
  const streams = ['1', '2', '3', '4'].map((page) => readAll(pages.openStream(page)));
  expect(await streams[0]).toContain('event: retired');
  tell(changed);
  pages.closeAll();
  expect((await Promise.all(streams)).map((text) => text.includes('lesson-changed'))).toEqual([
    false,
    true,
    true,
    true,
  ]);
});

test('a page that is closed leaves nothing that listens', () => {
  const { pages, listeners } = open();
  pages.openStream('one');
  expect(listeners.size).toBe(1);
  pages.closeAll();
  expect(listeners.size).toBe(0);
});
