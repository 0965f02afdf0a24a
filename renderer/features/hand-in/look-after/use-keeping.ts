import { useEffect, useState } from 'react';
import type { KeepingView } from '../../../../src-core/contract/keeping-view.ts';
import type { LessonDesk } from '../../../client/lesson-desk.ts';

/** How long the lesson is kept, and the ways to set that and to look again. */
export interface Keeping {
  /** Null: it is being asked for. */
  readonly view: KeepingView | null;
  /** Null: no last day. */
  readonly setUntil: (until: string | null) => Promise<void>;
  readonly look: () => Promise<void>;
}

/** How long the lesson is kept, as its folder says. */
export function useKeeping({ client, lesson, report }: LessonDesk): Keeping {
  const [view, setView] = useState<KeepingView | null>(null);
  const look = async () => {
    const reply = await client.request('readKeeping', { lesson });
    if (reply.ok) setView(reply.value.keeping);
    else report(reply.problems);
  };
  // biome-ignore lint/correctness/useExhaustiveDependencies: looked at once for each lesson, and after each change
  useEffect(() => void look(), [client, lesson]);
  return {
    view,
    look,
    setUntil: async (until) => {
      const reply = await client.request('keepUntil', { lesson, until });
      if (reply.ok) setView(reply.value.keeping);
      else report(reply.problems);
    },
  };
}

/** The last day of the latest other lesson of the same class that has one still to come; null: there is none. */
export function findUsualDay(view: KeepingView, className: string): string | null {
  const alike = view.others.filter((one) => one.className === className && !one.isOverdue);
  const [latest] = alike
    .filter(({ until }) => until !== null)
    .sort((one, other) => (one.date < other.date ? 1 : -1));
  return latest?.until ?? null;
}
