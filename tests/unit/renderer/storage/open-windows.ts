// Before Dexie looks for one: it takes the IndexedDB that is there when it is loaded.
import 'fake-indexeddb/auto';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { ulid } from 'ulid';
import { openLessonStore } from '../../../../renderer/storage/lesson-store.ts';
import { openPageDatabase, type PageDatabase } from '../../../../renderer/storage/page-database.ts';
import { buildDeskClient, type DeskClient, type Wire } from '../../../../src-core/contract/desk-client.ts';
import type { LessonId } from '../../../../src-core/contract/desk-view.ts';
import type { DeskEvent } from '../../../../src-core/contract/events.ts';
import { type Desk, openDesk } from '../../../../src-core/host/desk/desk.ts';
import { openFace } from '../../../../src-core/host/desk/face.ts';
import { openInProcessWire } from '../../../contract/in-process-wire.ts';
import { writeSmallLesson } from '../../../contract/small-lesson.ts';

/** How a wire fails: not at all, before the host hears, after the host has done it. */
type Weather = 'fair' | 'cut' | 'reply-lost';

/** A real host with a real lesson, and one browser's storage that survives its windows. */
export async function openDeskForWindows() {
  const home = await mkdtemp(path.join(tmpdir(), 'routemark-store-'));
  const folder = path.join(home, 'lesson');
  await writeSmallLesson(folder);
  const faults: unknown[] = [];
  const start = async () => {
    const desk = await openDesk({
      face: 'browser',
      version: '0',
      home,
      chooseFolders: null,
      filmDemo: async () => {},
      onFault: (_, fault) => faults.push(fault),
    });
    const opened = await desk.openFirst(folder);
    if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
    return { desk, lesson: opened.value };
  };
  let host = await start();
  const reader = () => buildDeskClient(openInProcessWire(openFace(host.desk)));
  await reader().request('readClips', { lesson: host.lesson, since: null });
  return {
    folder,
    lesson: host.lesson,
    faults,
    getDesk: () => host.desk,
    openStorage: () => openPageDatabase(home),
    reread: () => reader().request('readClips', { lesson: host.lesson, since: null }),
    restart: async () => {
      await host.desk.close();
      host = await start();
    },
    readJournal: async () => {
      const text = await readFile(path.join(folder, 'marks.jsonl'), 'utf8').catch(() => '');
      const lines = text
        .split('\n')
        .slice(1)
        .filter((line) => line !== '');
      return lines.map(
        (line) => JSON.parse(line) as { id: string; what: { kind: string } & Record<string, unknown> },
      );
    },
    close: async () => {
      await host.desk.close();
      await rm(home, { recursive: true, force: true });
    },
  };
}

/** One window: a face at the host, a wire whose weather can change, and a store on the shared storage. */
export function openWindow(desk: Desk, lesson: LessonId, database: PageDatabase) {
  const wire = openInProcessWire(openFace(desk));
  const listeners = new Set<(event: DeskEvent) => void>();
  const weather = { now: 'fair' as Weather };
  const unreachable = { ok: false, problems: [{ code: 'desk-unreachable' }] };
  const rough: Wire = {
    ...wire,
    request: async (message) => {
      if (weather.now === 'cut') return unreachable;
      const reply = await wire.request(message);
      return weather.now === 'reply-lost' ? unreachable : reply;
    },
    subscribe: (listener) => {
      const leave = wire.subscribe((event) => {
        if (weather.now === 'fair') listener(event);
      });
      listeners.add(listener);
      return () => {
        leave();
        listeners.delete(listener);
      };
    },
  };
  const client: DeskClient = buildDeskClient(rough);
  const store = openLessonStore({ client, database, lesson, getWho: () => 'teacher', newId: rising() });
  return {
    store,
    weather,
    reconnect: () => {
      weather.now = 'fair';
      for (const listener of listeners) listener({ kind: 'reconnected' });
    },
  };
}

/** Ids that rise within the test run, whatever the clock does. */
let serial = 0;
function rising(): () => string {
  return () => {
    serial += 1;
    return ulid(Date.parse('2025-05-15T14:00:00Z') + serial);
  };
}

/** Waits until something holds, by looking again after every turn; fails by the test's own time limit. */
export async function until(holds: () => boolean | Promise<boolean>): Promise<void> {
  while (!(await holds())) await new Promise((resolve) => setTimeout(resolve, 5));
}
