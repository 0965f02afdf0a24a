import { useState } from 'react';
import type { Problem } from '../../../src-core/contract/problem.ts';
import type { LessonDesk } from '../../client/lesson-desk.ts';
import { readPreferences } from '../../ui/preferences.ts';
import type { HandInWhat } from './use-hand-in-draft.ts';

/** What is asked to be written. */
export interface WriteOrder {
  readonly draft: string;
  readonly what: HandInWhat;
  readonly into: string | null;
  readonly fileName: string;
  readonly replace: boolean;
}

/** How the writing went, and the way to begin it; problems are of the latest try. */
export interface Writing {
  readonly state: 'not-yet' | 'writing' | 'written' | 'failed';
  /** Where it lies now. */
  readonly path: string | null;
  readonly problems: readonly Problem[];
  readonly write: (order: WriteOrder) => Promise<void>;
}

/** Writes what is handed in, and says how that went. */
export function useWriting(desk: LessonDesk): Writing {
  const [done, setDone] = useState<Omit<Writing, 'write'>>({ state: 'not-yet', path: null, problems: [] });
  return {
    ...done,
    write: async (order) => {
      setDone({ state: 'writing', path: null, problems: [] });
      const reply = await desk.ask('writeHandIn', {
        ...order,
        // The draft has its open flags in it, and the teacher has said that it may be written so.
        evenWithOpenFlags: true,
        who: readPreferences().who || 'teacher',
      });
      setDone({
        state: reply.ok ? 'written' : 'failed',
        path: reply.ok ? reply.value.path : null,
        problems: reply.problems,
      });
    },
  };
}
