import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { onTestFinished } from 'vitest';
import { buildDeskClient, type DeskClient } from '../../src-core/contract/desk-client.ts';
import { openFace } from '../../src-core/host/desk/face.ts';
import { type ServedDesk, serveDesk } from '../../src-core/host/loopback/serve-desk.ts';
import { openInProcessWire } from './in-process-wire.ts';
import { letIn, openTestDesk, type TestDesk } from './open-wires.ts';

/** An id as a page gives itself one. */
export const PAGE = '12345678-1234-1234-1234-123456789abc';

/** The small lesson over loopback, with what a browser that was let in sends. */
export interface Served {
  readonly test: TestDesk;
  readonly served: ServedDesk;
  readonly home: string;
  readonly headers: Readonly<Record<string, string>>;
  readonly client: DeskClient;
  readonly lesson: string;
  readonly clip: string;
}

/** The small lesson, served with a page of one line; `isRead`: with its clips read, which takes a while. */
export async function serveSmallLesson({ isRead = false } = {}): Promise<Served> {
  const test = await openTestDesk();
  const pageFolder = path.join(test.parent, 'page');
  await mkdir(path.join(pageFolder, 'assets'), { recursive: true });
  await writeFile(path.join(pageFolder, 'index.html'), '<meta nonce="__CSP_NONCE__"><p>page</p>');
  await writeFile(path.join(pageFolder, 'assets', 'a.js'), 'export {};');
  await writeFile(path.join(test.parent, 'secret.txt'), 'secret');
  const served = await serveDesk(test.desk, { port: 0, pageFolder });
  onTestFinished(() => served.close());
  const client = buildDeskClient(openInProcessWire(openFace(test.desk)));
  const opened = await client.request('openLesson', {
    folder: test.desk.tokens.hand(test.lessonFolder).token,
  });
  const update = opened.ok ? opened.value.update : null;
  const lesson = update?.kind === 'whole' ? update.view.lesson : '';
  const read = isRead ? await client.request('readClips', { lesson, since: null }) : null;
  const whole = read?.ok && read.value.update.kind === 'whole' ? read.value.update.view : null;
  const clip = whole?.clips[0]?.id ?? '';
  return {
    test,
    served,
    home: `http://127.0.0.1:${served.port}`,
    headers: await letIn(served),
    client,
    lesson,
    clip,
  };
}
