import { useEffect, useRef, useState } from 'react';
import type { FolderRef } from '../../../../src-core/contract/desk-view.ts';
import type { TabletView } from '../../../../src-core/contract/keeping-view.ts';
import type { Problem } from '../../../../src-core/contract/problem.ts';
import type { LessonDesk } from '../../../client/lesson-desk.ts';

/** A comparison of a tablet with the lesson. */
export interface Tablet {
  readonly folder: FolderRef | null;
  /** Null: not comparing now. */
  readonly running: { readonly done: number; readonly total: number } | null;
  readonly found: TabletView | null;
  readonly problems: readonly Problem[];
  readonly compare: (folder: FolderRef) => Promise<void>;
  readonly stop: () => void;
}

type State = Pick<Tablet, 'folder' | 'running' | 'found' | 'problems'>;

const IDLE: State = { folder: null, running: null, found: null, problems: [] };

/** Compares a tablet's folder with the lesson; ends when the sheet goes. */
export function useTablet({ client, lesson }: LessonDesk): Tablet {
  const [now, setNow] = useState(IDLE);
  const job = useRef<AbortController | null>(null);
  const stop = () => job.current?.abort();
  useEffect(() => () => job.current?.abort(), []);
  return {
    ...now,
    stop,
    compare: async (folder) => {
      const controller = new AbortController();
      job.current = controller;
      const { signal } = controller;
      setNow({ ...IDLE, folder, running: { done: 0, total: 0 } });
      const reply = await client.request(
        'compareTablet',
        { lesson, folder: folder.token },
        { signal, onProgress: ({ done, total }) => setNow((old) => ({ ...old, running: { done, total } })) },
      );
      const problems = reply.problems.filter(({ code }) => code !== 'call-cancelled');
      setNow({ folder, running: null, found: reply.ok ? reply.value.tablet : null, problems });
    },
  };
}
