import { monotonicFactory } from 'ulid';
import type { DeskClient } from '../../src-core/contract/desk-client.ts';
import type { LessonId } from '../../src-core/contract/desk-view.ts';
import type { LessonUpdate } from '../../src-core/contract/lesson-update.ts';
import type { JournalAct } from '../../src-core/marking/journal-event.ts';
import { openLessonCopy } from './lesson-copy.ts';
import type { LessonState } from './lesson-state.ts';
import { openOutbox } from './outbox.ts';
import type { OutboxAct, OutboxEntry } from './outbox-entry.ts';
import type { PageDatabase } from './page-database.ts';
import { findRedoAct, findUndoAct } from './pending-trail.ts';
import { openSending, type RunAlone, runAlone } from './sending.ts';
import { listPending, openShownState } from './shown-state.ts';

/** One lesson in this window: what is shown, and the way to decide. */
export interface LessonStore {
  readonly lesson: LessonId;
  readonly getState: () => LessonState;
  readonly subscribe: (listener: () => void) => () => void;
  /** Shows what was kept, asks for what is newer, and sends what waits from the last time. */
  readonly start: () => Promise<void>;
  /** Records decisions, one undo each; shown at once, on this disk as soon as it resolves, sent by itself. */
  readonly decide: (acts: readonly JournalAct[]) => Promise<void>;
  /** Takes the latest decision back; nothing where there is none. */
  readonly undo: () => Promise<void>;
  readonly redo: () => Promise<void>;
  /** Takes what any other call gave back of this lesson; resolves once this window is as far. */
  readonly take: (update: LessonUpdate) => Promise<void>;
  /** The revision here, to be told with every call; null: the whole lesson, please. */
  readonly getSince: () => number | null;
  /** Resolves when all that was decided is recorded, or cannot be for now. */
  readonly settle: () => Promise<void>;
  readonly dismissRefused: () => void;
  readonly stop: () => void;
}

/** What a store stands on. */
export interface StoreParts {
  readonly client: DeskClient;
  readonly database: PageDatabase;
  readonly lesson: LessonId;
  /** Who decides now, as the journal shall say. */
  readonly getWho: () => string;
  /** Ids that rise; ULIDs unless a test gives its own. */
  readonly newId?: () => string;
  readonly alone?: RunAlone;
}

/** The store of one lesson. Nothing is asked before `start`. */
export function openLessonStore(parts: StoreParts): LessonStore {
  const { client, database, lesson, getWho, newId = monotonicFactory(), alone = runAlone } = parts;
  const shown = openShownState();
  const listWaiting = () => listPending(outbox.list(), copy.get());
  let showing = '';
  const show = () => {
    const waiting = listWaiting();
    // The same entries come by more than one way: from this window, from its disk, from the other windows.
    const next = [copy.get()?.revision, ...waiting.map(({ id, acked }) => `${id} ${acked}`)].join('\n');
    if (next === showing) return;
    showing = next;
    shown.show(copy.get(), waiting);
  };
  const copy = openLessonCopy({ client, database }, lesson, show);
  const outbox = openOutbox(database, lesson, () => show());
  const sending = openSending({ client, lesson, outbox, copy }, shown, alone);
  const leave = client.subscribe((event) => {
    if (event.kind === 'reconnected') void sending.catchUp().then(sending.drain);
    if (event.kind !== 'lesson-changed' || event.lesson !== lesson) return;
    if (event.revision > (copy.get()?.revision ?? -1)) void sending.catchUp();
  });
  const add = async (acts: readonly OutboxAct[]) => {
    if (acts.length === 0) return;
    const who = getWho();
    await outbox.add(acts.map((act): OutboxEntry => ({ id: newId(), lesson, who, act, acked: null })));
    void sending.drain();
  };
  const turnBack = (find: typeof findUndoAct | typeof findRedoAct) => {
    const journal = copy.get()?.journal;
    const act = journal ? find(journal, listWaiting()) : null;
    return add(act === null ? [] : [act]);
  };
  return {
    lesson,
    getState: shown.get,
    subscribe: shown.subscribe,
    start: async () => {
      await copy.restore();
      await sending.catchUp();
      await sending.drain();
      await outbox.tidy(copy.get()?.revision ?? 0);
    },
    decide: add,
    undo: () => turnBack(findUndoAct),
    redo: () => turnBack(findRedoAct),
    take: async (update) => {
      if (!copy.take(update)) await sending.catchUp();
    },
    getSince: () => copy.get()?.revision ?? null,
    settle: sending.drain,
    dismissRefused: () => shown.set({ refused: [] }),
    stop: () => {
      sending.stop();
      leave();
      outbox.stop();
      void copy.keep();
    },
  };
}
