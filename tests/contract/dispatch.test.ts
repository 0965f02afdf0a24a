import { describe, expect, test } from 'vitest';
import { buildDeskClient } from '../../src-core/contract/desk-client.ts';
import type { DeskView } from '../../src-core/contract/desk-view.ts';
import type { Handlers } from '../../src-core/contract/dispatch.ts';
import { buildWireText, readWireText } from '../../src-core/contract/wire-text.ts';
import { type CallContext, openFace } from '../../src-core/host/desk/face.ts';
import { succeed } from '../../src-core/platform/outcome.ts';
import { openInProcessWire } from './in-process-wire.ts';

const DESK: DeskView = {
  face: 'browser',
  version: '0.1.0',
  hasFolderDialog: false,
  takesUploads: true,
  hasFfmpeg: true,
  lessons: [],
  openFirst: null,
};

const handlers = {
  readDesk: async () => succeed({ ...DESK, secret: 'not in the list' }),
  forgetLesson: async () => {
    throw new Error('a fault');
  },
  readClips: (_: unknown, { signal, onProgress }: CallContext) =>
    new Promise((_resolve, reject) => {
      signal.addEventListener('abort', () => reject(signal.reason));
      onProgress({ step: 'read', done: 1, total: 2 });
    }),
} as unknown as Handlers<CallContext>;

function open() {
  const faults: unknown[] = [];
  const face = openFace({ handlers, subscribe: () => () => {}, onFault: (_, fault) => faults.push(fault) });
  return { face, faults, client: buildDeskClient(openInProcessWire(face)) };
}

const LESSON = '0123456789abcdef';

describe('a face', () => {
  test('gets what the list names, and nothing else', async () => {
    expect(await open().client.request('readDesk', {})).toEqual({ ok: true, value: DESK, problems: [] });
  });

  test.each(['nonsense', '__proto__', 'constructor', 'toString', 'hasOwnProperty', ''])(
    'is told that there is no call “%s”',
    async (name) => {
      const reply = await open().face.request({ job: 'job-00001', name, input: {} });
      expect(reply).toEqual({ ok: false, problems: [{ code: 'call-unknown', name }] });
    },
  );

  test.each([
    ['an unknown key', { lesson: LESSON, more: 1 }],
    ['a key that is every object’s', JSON.parse(`{"lesson":"${LESSON}","__proto__":{"x":1}}`)],
    ['a path for an id', { lesson: '../../etc/passwd' }],
    ['no object', 'lesson'],
    ['nothing', undefined],
  ])('is refused %s', async (_, input) => {
    const reply = await open().face.request({ job: 'job-00001', name: 'forgetLesson', input });
    expect(reply).toMatchObject({ ok: false, problems: [{ code: 'call-malformed' }] });
    expect(({} as { x?: number }).x).toBeUndefined();
  });

  test.each([
    null,
    'x',
    [],
    { job: '../x', name: 'readDesk', input: {} },
    { job: 1, name: 'readDesk', input: {} },
  ])('is refused a message that is none: %j', async (message) => {
    expect(await open().face.request(message)).toMatchObject({
      ok: false,
      problems: [{ code: 'call-malformed' }],
    });
  });

  test('is told of a fault without its words, which the host’s log has', async () => {
    const { client, faults } = open();
    const reply = await client.request('forgetLesson', { lesson: LESSON });
    expect(reply).toMatchObject({ ok: false, problems: [{ code: 'program-fault' }] });
    expect(JSON.stringify(reply)).not.toContain('a fault');
    expect(faults).toHaveLength(1);
  });

  test('hears progress and can stop what it asked for', async () => {
    const heard: number[] = [];
    const stop = new AbortController();
    const reply = await open().client.request(
      'readClips',
      { lesson: LESSON, since: null },
      {
        signal: stop.signal,
        onProgress: ({ done }) => {
          heard.push(done);
          stop.abort();
        },
      },
    );
    expect(heard).toEqual([1]);
    expect(reply).toEqual({ ok: false, problems: [{ code: 'call-cancelled' }] });
  });

  test('cannot stop what another face asked for', async () => {
    const [one, other] = [open().face, open().face];
    const reply = one.request({
      job: 'job-00001',
      name: 'readClips',
      input: { lesson: LESSON, since: null },
    });
    other.cancel('job-00001');
    const first = await Promise.race([reply, Promise.resolve('still running')]);
    expect(first).toBe('still running');
    one.cancel('job-00001');
    expect(await reply).toMatchObject({ ok: false });
  });
});

test('what is unbounded stays so over a wire', () => {
  const data = {
    uncertaintySeconds: Number.POSITIVE_INFINITY,
    list: [Number.NEGATIVE_INFINITY, 0, null],
    text: '∞',
  };
  expect(readWireText(buildWireText(data))).toEqual(data);
});
