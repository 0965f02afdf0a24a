import { useEffect, useState } from 'react';
import type { CallOutput } from '../../../src-core/contract/calls.ts';
import type { DeskClient } from '../../../src-core/contract/desk-client.ts';
import type { Problem } from '../../../src-core/contract/problem.ts';
import type { Progress } from '../../../src-core/contract/progress.ts';
import type { Reply } from '../../../src-core/contract/reply.ts';
import type { JobProgress } from '../../client/lesson-state.ts';

/** Lessons as far as they are known, and what is still being done about them. */
export interface LookBackState {
  /** Null: not read yet, or not to be read. */
  readonly gathered: CallOutput<'readLookBack'> | null;
  readonly problems: readonly Problem[];
  /** Lessons are being graded; null: none are. */
  readonly job: JobProgress | null;
  /** Lessons whose figures are old or missing, where adding up was stopped. */
  readonly toAdd: number;
  readonly stop: () => void;
  readonly goOn: () => void;
}

/** Shows what is kept of a folder's lessons at once, then has graded what is not up to date. Null: the usual folders. */
export function useLookBack(client: DeskClient, folder: string | null): LookBackState {
  const [gathered, setGathered] = useState<LookBackState['gathered']>(null);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const [job, setJob] = useState<JobProgress | null>(null);
  const [isAdding, setAdding] = useState(true);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another folder has other lessons
  useEffect(() => setGathered(null), [folder]);
  useEffect(() => {
    const controller = new AbortController();
    const { signal } = controller;
    const onProgress = (progress: Progress, secondsLeft: number | null) =>
      !signal.aborted && setJob({ progress, secondsLeft });
    const take = (reply: Reply<'readLookBack'>) => {
      if (signal.aborted) return;
      setProblems(reply.problems.length > 0 || !reply.ok ? reply.problems : reply.value.problems);
      if (reply.ok) setGathered(reply.value);
    };
    const read = async () => {
      const kept = await client.request('readLookBack', { folder });
      take(kept);
      if (signal.aborted || !isAdding || !kept.ok || kept.value.stale === 0) return;
      onProgress({ step: 'figures', done: 0, total: kept.value.stale }, null);
      take(await client.request('refreshLookBack', { folder }, { signal, onProgress }));
      if (!signal.aborted) setJob(null);
    };
    void read();
    return () => {
      controller.abort();
      setJob(null);
    };
  }, [client, folder, isAdding]);
  return {
    gathered,
    problems,
    job,
    toAdd: isAdding ? 0 : (gathered?.stale ?? 0),
    stop: () => setAdding(false),
    goOn: () => setAdding(true),
  };
}
