import { useEffect, useState } from 'react';
import type { CallOutput } from '../../../src-core/contract/calls.ts';
import type { DeskClient } from '../../../src-core/contract/desk-client.ts';
import type { Problem } from '../../../src-core/contract/problem.ts';
import type { Progress } from '../../../src-core/contract/progress.ts';
import type { JobProgress } from '../../client/lesson-state.ts';

/** Lessons as far as they are known, and what is still being done about them. */
export interface LookBackState {
  /** Null: not read yet, or not to be read. */
  readonly gathered: CallOutput<'readLookBack'> | null;
  readonly problems: readonly Problem[];
  /** Lessons are being graded; null: none are. */
  readonly job: JobProgress | null;
  readonly stop: () => void;
}

/** Shows what is kept of a folder's lessons at once, then has graded what is not up to date. Null: the usual folders. */
export function useLookBack(client: DeskClient, folder: string | null): LookBackState {
  const [gathered, setGathered] = useState<LookBackState['gathered']>(null);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const [job, setJob] = useState<JobProgress | null>(null);
  const [stopper, setStopper] = useState<AbortController | null>(null);
  useEffect(() => {
    const controller = new AbortController();
    const { signal } = controller;
    const take = (reply: Awaited<ReturnType<typeof client.request<'readLookBack'>>>) => {
      if (signal.aborted) return false;
      setProblems(reply.ok ? reply.value.problems : reply.problems.filter(isNoStop));
      if (reply.ok) setGathered(reply.value);
      return reply.ok;
    };
    const read = async () => {
      setGathered(null);
      const kept = await client.request('readLookBack', { folder });
      if (!take(kept) || !kept.ok || kept.value.stale === 0) return;
      setStopper(controller);
      setJob({ progress: { step: 'figures', done: 0, total: kept.value.stale }, secondsLeft: null });
      const onProgress = (progress: Progress, secondsLeft: number | null) =>
        setJob({ progress, secondsLeft });
      take(await client.request('refreshLookBack', { folder }, { signal, onProgress }));
      setJob(null);
    };
    void read();
    return () => controller.abort();
  }, [client, folder]);
  const stop = () => {
    stopper?.abort();
    setJob(null);
  };
  return { gathered, problems, job, stop };
}

function isNoStop({ code }: Problem): boolean {
  return code !== 'call-cancelled';
}
