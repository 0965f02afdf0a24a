import { applyUpdate, buildPatch } from '../../src-core/contract/lesson-update.ts';
import type { LessonView } from '../../src-core/contract/lesson-view.ts';
import { EMPTY_STATE, type LessonState } from './lesson-state.ts';
import type { OutboxEntry } from './outbox-entry.ts';
import { showPending } from './show-pending.ts';

/** What is shown of a lesson, and who hears when that changes. */
export interface ShownState {
  readonly get: () => LessonState;
  readonly set: (change: Partial<LessonState>) => void;
  readonly subscribe: (listener: () => void) => () => void;
  /** Shows what the host said with what waits folded in. */
  readonly show: (base: LessonView | null, pending: readonly OutboxEntry[]) => void;
}

/** A state with nothing in it. */
export function openShownState(): ShownState {
  const listeners = new Set<() => void>();
  let state = EMPTY_STATE;
  const set = (change: Partial<LessonState>) => {
    state = { ...state, ...change };
    for (const listener of listeners) listener();
  };
  return {
    get: () => state,
    set,
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    show: (base, pending) =>
      set({
        // What waits is shown at a key: what it touches has changed anyway, and comparing it would only take time.
        view: pending.length > 0 && base ? showPending(base, pending) : keepIdentity(state.view, base),
        waiting: pending.filter(({ acked }) => acked === null).length,
      }),
  };
}

/** The entries that a view does not have yet. */
export function listPending(
  entries: readonly OutboxEntry[],
  base: LessonView | null,
): readonly OutboxEntry[] {
  return entries.filter(({ acked }) => acked === null || acked > (base?.revision ?? -1));
}

/** Parts that did not change stay the very same objects, so that nothing is painted anew when the host agrees. */
function keepIdentity(from: LessonView | null, to: LessonView | null): LessonView | null {
  if (!from || !to || from.lesson !== to.lesson) return to;
  return from === to ? to : applyUpdate(from, { kind: 'patch', patch: buildPatch(from, to) });
}
