import { ulid } from 'ulid';
import type { DeskClient } from '../../src-core/contract/desk-client.ts';
import { applyUpdate, type LessonUpdate } from '../../src-core/contract/lesson-update.ts';
import type { LessonView } from '../../src-core/contract/lesson-view.ts';
import { openTestDesk, type TestDesk, WIRES } from './open-wires.ts';

/** Who decides in these tests. */
export const who = 'M. Ferrow';

export interface Open {
  readonly test: TestDesk;
  readonly client: DeskClient;
  view: LessonView;
}

/** The small lesson opened over a wire, its clips read. */
export async function openOver(wire: string): Promise<Open> {
  const test = await openTestDesk();
  const client = await getWire(wire)(test.desk);
  const { token } = test.desk.tokens.hand(test.lessonFolder);
  const opened = await client.request('openLesson', { folder: token });
  if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
  const view = follow(null, opened.value.update);
  const read = await client.request('readClips', { lesson: view.lesson, since: view.revision });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return { test, client, view: follow(view, read.value.update) };
}

/** The wire of this name, opened. */
export function getWire(name: string) {
  const wire = WIRES[name];
  if (!wire) throw new Error(`no wire ${name}`);
  return wire;
}

/** The view that an update leads to. */
export function follow(view: LessonView | null, update: LessonUpdate): LessonView {
  const next = applyUpdate(view, update);
  if (!next) throw new Error('the update does not fit');
  return next;
}

/** Decides, and follows the change. */
export async function decide(open: Open, ...acts: readonly object[]): Promise<readonly string[]> {
  const entries = acts.map((act) => ({ id: ulid(), act }) as never);
  const { lesson, revision } = open.view;
  const reply = await open.client.request('decide', { lesson, since: revision, who, entries });
  if (!reply.ok) throw new Error(JSON.stringify(reply.problems));
  open.view = follow(open.view, reply.value.update);
  return reply.value.acknowledged;
}
