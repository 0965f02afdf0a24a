import type { DeskClient } from '../../src-core/contract/desk-client.ts';
import type { DeskEvent } from '../../src-core/contract/events.ts';
import { applyUpdate, type LessonUpdate } from '../../src-core/contract/lesson-update.ts';
import type { LessonView } from '../../src-core/contract/lesson-view.ts';
import type { LessonState } from './lesson-state.ts';

/** A lesson's state that keeps itself up to date. */
export interface Follower {
  readonly getState: () => LessonState;
  readonly change: (change: Partial<LessonState>) => void;
  /** Takes an update in; asks for the whole where it does not fit, and leaves one that is older than what is here. */
  readonly take: (update: LessonUpdate) => void;
  readonly subscribe: (listener: () => void) => () => void;
  readonly close: () => void;
}

/** Follows a lesson from a first view on, through every change that the host tells of. */
export function buildFollower(client: DeskClient, first: LessonView): Follower {
  const { lesson } = first;
  const listeners = new Set<() => void>();
  let state: LessonState = { view: first, reading: null, waiting: 0, troubles: [], isReached: true };
  let isAsking = false;
  let isStale = false;
  const change = (part: Partial<LessonState>) => {
    state = { ...state, ...part };
    for (const listener of listeners) listener();
  };
  const refresh = async (since: number | null): Promise<void> => {
    // One question at a time: what changed meanwhile is asked for once, when the answer is here.
    isStale = isAsking;
    if (isAsking) return;
    isAsking = true;
    const reply = await client.request('readLesson', { lesson, since });
    isAsking = false;
    if (reply.ok) take(reply.value.update);
    change({ isReached: reply.ok || !reply.problems.some(({ code }) => code === 'desk-unreachable') });
    if (isStale) await refresh(state.view.revision);
  };
  const take = (update: LessonUpdate) => {
    const to = update.kind === 'whole' ? update.view.revision : update.patch.to;
    if (to <= state.view.revision) return;
    const view = applyUpdate(state.view, update);
    if (view) change({ view });
    else void refresh(null);
  };
  const hear = (event: DeskEvent) => {
    if (event.kind === 'lesson-changed' && event.lesson === lesson) {
      if (event.revision > state.view.revision) void refresh(state.view.revision);
    }
    if (event.kind === 'reconnected') void refresh(null);
  };
  const leave = client.subscribe(hear);
  return {
    getState: () => state,
    change,
    take,
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    close: leave,
  };
}
