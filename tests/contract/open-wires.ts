import { randomUUID } from 'node:crypto';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { onTestFinished } from 'vitest';
import { openShellWire, type WireContents, type WireEvent } from '../../electron/main/ipc-wire.ts';
import { PAGE_ADDRESS } from '../../electron/main/locks.ts';
import { buildBridge } from '../../electron/preload/build-bridge.ts';
import { buildDeskClient, type DeskClient, type Wire } from '../../src-core/contract/desk-client.ts';
import type { DeskEvent } from '../../src-core/contract/events.ts';
import { buildWireText, readWireText } from '../../src-core/contract/wire-text.ts';
import { type Desk, openDesk } from '../../src-core/host/desk/desk.ts';
import { openFace } from '../../src-core/host/desk/face.ts';
import { type ServedDesk, serveDesk } from '../../src-core/host/loopback/serve-desk.ts';
import { openInProcessWire } from './in-process-wire.ts';
import { writeSmallLesson } from './small-lesson.ts';

/** A desk with the small lesson written and not opened yet. */
export interface TestDesk {
  readonly desk: Desk;
  readonly parent: string;
  readonly lessonFolder: string;
  readonly faults: unknown[];
}

/** A desk of its own for one test, in a folder that goes away with it. */
export async function openTestDesk(): Promise<TestDesk> {
  const parent = await mkdtemp(path.join(tmpdir(), 'routemark-contract-'));
  const lessonFolder = path.join(parent, 'lesson');
  await writeSmallLesson(lessonFolder);
  const faults: unknown[] = [];
  const desk = await openDesk({
    face: 'browser',
    version: '0.0.0',
    home: path.join(parent, 'home'),
    chooseFolders: null,
    filmDemo: (folder) => writeSmallLesson(folder),
    onFault: (_, fault) => faults.push(fault),
  });
  onTestFinished(async () => {
    await desk.close();
    await rm(parent, { recursive: true, force: true });
  });
  return { desk, parent, lessonFolder, faults };
}

/** Every wire that runs here, by name. */
export const WIRES: Readonly<Record<string, (desk: Desk) => Promise<DeskClient>>> = {
  'in process': async (desk) => buildDeskClient(openInProcessWire(openFace(desk))),
  'over loopback': async (desk) => {
    const served = await serveDesk(desk, { port: 0, pageFolder: '/nowhere' });
    onTestFinished(() => served.close());
    return buildDeskClient(await openTestLoopbackWire(served));
  },
  'over the shell’s IPC': async (desk) => buildDeskClient(openTestShellWire(desk)),
};

/** What a browser sends with its requests once it was let in. */
export async function letIn(served: ServedDesk): Promise<Readonly<Record<string, string>>> {
  const opened = await fetch(served.makeAddress(), { redirect: 'manual' });
  const cookie = opened.headers.get('set-cookie')?.split(';')[0] ?? '';
  return { cookie, origin: `http://127.0.0.1:${served.port}` };
}

/** The page's wire, with what a browser does by itself done by hand. */
async function openTestLoopbackWire(served: ServedDesk): Promise<Wire> {
  const headers = await letIn(served);
  const home = headers.origin ?? '';
  const page = randomUUID();
  const listeners = new Set<(event: DeskEvent) => void>();
  const stop = new AbortController();
  onTestFinished(() => stop.abort());
  const stream = await fetch(`${home}/events?page=${page}`, { headers, signal: stop.signal });
  readEvents(stream, (event) => {
    for (const listener of listeners) listener(event);
  }).catch(() => {});
  const post = (address: string, body: unknown) =>
    fetch(home + address, {
      method: 'POST',
      headers: { ...headers, 'content-type': 'application/json', 'x-routemark-page': page },
      body: buildWireText(body),
    });
  return {
    request: async (message) => readWireText(await (await post('/call', message)).text()),
    cancel: (job) => void post('/cancel', { job }),
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    newJob: () => randomUUID(),
  };
}

async function readEvents(stream: Response, tell: (event: DeskEvent) => void): Promise<void> {
  let text = '';
  for await (const part of stream.body?.pipeThrough(new TextDecoderStream()) ?? []) {
    const blocks = (text + part).split('\n\n');
    text = blocks.pop() ?? '';
    for (const block of blocks) {
      const data = /^data: (.*)$/m.exec(block)?.[1];
      if (data && !block.startsWith('event:')) tell(readWireText(data) as DeskEvent);
    }
  }
}

/** Both ends of the shell's wire, joined by a pair of objects that copy what passes, as Electron does. */
function openTestShellWire(desk: Desk): Wire {
  const handlers = new Map<string, (event: WireEvent, value: unknown) => unknown>();
  const ears: ((event: unknown, value: unknown) => void)[] = [];
  const contents: WireContents = {
    id: 1,
    isDestroyed: () => false,
    send: (_, value) => {
      for (const ear of ears) ear({}, structuredClone(value));
    },
    once: () => undefined,
  };
  const event = { sender: contents, senderFrame: { url: PAGE_ADDRESS, parent: null } };
  openShellWire(
    desk,
    {
      handle: (channel, listener) => handlers.set(channel, listener),
      on: (channel, listener) => handlers.set(channel, listener),
    },
    () => {},
  );
  const bridge = buildBridge({
    invoke: async (channel, value) =>
      structuredClone(await handlers.get(channel)?.(event, structuredClone(value))),
    send: (channel, value) => handlers.get(channel)?.(event, structuredClone(value)),
    on: (_, listener) => ears.push(listener),
  });
  return { ...bridge, newJob: () => randomUUID() };
}
