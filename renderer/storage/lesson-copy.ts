import type { DeskClient } from '../../src-core/contract/desk-client.ts';
import type { LessonId } from '../../src-core/contract/desk-view.ts';
import { applyUpdate, type LessonUpdate } from '../../src-core/contract/lesson-update.ts';
import type { LessonView } from '../../src-core/contract/lesson-view.ts';
import type { Problem } from '../../src-core/contract/problem.ts';
import type { PageDatabase } from './page-database.ts';

/** How long nothing may change before the page's copy is written again: writing it costs more than a key may. */
const KEEP_AFTER_MS = 3000;

/** The page's copy of what the host says of one lesson, without anything that waits. */
export interface LessonCopy {
  readonly get: () => LessonView | null;
  /** Takes what a call gave back. False: it does not follow on what is here, so `catchUp`. */
  readonly take: (update: LessonUpdate) => boolean;
  /** Asks the host for what is missing; opens the lesson again where the host was started anew. */
  readonly catchUp: () => Promise<readonly Problem[]>;
  /** Puts what was kept from the last time here, if nothing newer is. */
  readonly restore: () => Promise<void>;
  /** Writes what is here now, unless it was written already. */
  readonly keep: () => Promise<void>;
}

/** A copy of one lesson, empty at first. `onChange` hears of every other view. */
export function openLessonCopy(
  { client, database }: { readonly client: DeskClient; readonly database: PageDatabase },
  lesson: LessonId,
  onChange: () => void,
): LessonCopy {
  let view: LessonView | null = null;
  let timer: ReturnType<typeof setTimeout> | null = null;
  let isKept = true;

  const keep = async () => {
    if (timer !== null) clearTimeout(timer);
    timer = null;
    // A page without storage works on; it only opens the lesson a little later next time.
    if (!view || isKept) return;
    isKept = true;
    await database.lessons.put({ lesson, view }).catch(() => {});
  };
  const put = (next: LessonView) => {
    view = next;
    isKept = false;
    if (timer !== null) clearTimeout(timer);
    timer = setTimeout(keep, KEEP_AFTER_MS);
    onChange();
  };
  const take = (update: LessonUpdate): boolean => {
    const to = update.kind === 'whole' ? update.view.revision : update.patch.to;
    // A reply that was overtaken by a newer one.
    if (view && to <= view.revision) return true;
    const next = applyUpdate(view, update);
    if (next) put(next);
    return next !== null;
  };
  const ask = async (since: number | null): Promise<readonly Problem[]> => {
    const reply = await client.request('readLesson', { lesson, since });
    if (reply.ok) return take(reply.value.update) ? [] : ask(null);
    if (!reply.problems.some(({ code }) => code === 'lesson-unknown')) return reply.problems;
    const opened = await client.request('openLesson', { lesson });
    if (opened.ok) take(opened.value.update);
    return opened.ok ? [] : opened.problems;
  };

  return {
    get: () => view,
    take,
    catchUp: () => ask(view?.revision ?? null),
    restore: async () => {
      const kept = await database.lessons.get(lesson).catch(() => undefined);
      if (kept && !view) {
        view = kept.view;
        onChange();
      }
    },
    keep,
  };
}
