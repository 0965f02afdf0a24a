import { type ReactNode, useEffect, useRef, useState } from 'react';
import type { Problem } from '../../src-core/contract/problem.ts';
import type { Progress } from '../../src-core/contract/progress.ts';
import { BARE_NAMES } from '../client/lesson-names.ts';
import type { JobProgress } from '../client/lesson-state.ts';
import { withTimeLeft } from '../text/english/amounts.ts';
import { ARCHIVE } from '../text/english/archive.ts';
import { describeProblem } from '../text/english/problems.ts';
import { FRAME } from '../text/english/window.ts';
import { Button } from './button.tsx';
import { Bar } from './marks.tsx';
import { StopNote } from './stop-note.tsx';

/** How a piece of work is watched and stopped. */
export interface RunWatch {
  readonly signal: AbortSignal;
  readonly onProgress: (progress: Progress, secondsLeft: number | null) => void;
}

/** One long piece of work in a slip, which ends with the slip, and what went wrong with it. */
export function useArchiveRun() {
  const [job, setJob] = useState<JobProgress | null>(null);
  const [outcome, setOutcome] = useState<Outcome>({ isDone: false, problems: [] });
  const stopper = useRef<AbortController | null>(null);
  const stop = () => stopper.current?.abort();
  useEffect(() => () => stopper.current?.abort(), []);
  /** Runs work; gives its value, or null where there is none, and shows what went wrong. */
  const run = async <Value,>(
    work: (
      watch: RunWatch,
    ) => Promise<
      { readonly problems: readonly Problem[] } & (
        | { readonly ok: true; readonly value: Value }
        | { readonly ok: false }
      )
    >,
  ): Promise<Value | null> => {
    const controller = new AbortController();
    stopper.current = controller;
    setOutcome({ isDone: false, problems: [] });
    const onProgress: RunWatch['onProgress'] = (progress, secondsLeft) =>
      stopper.current === controller && setJob({ progress, secondsLeft });
    onProgress({ step: 'copy', done: 0, total: 0 }, null);
    const reply = await work({ signal: controller.signal, onProgress });
    setJob(null);
    const problems = reply.problems.filter(({ code }) => code !== 'call-cancelled');
    setOutcome({ isDone: reply.ok, problems });
    return reply.ok ? reply.value : null;
  };
  return { job, ...outcome, run, stop };
}

interface Outcome {
  /** It was done; what its problems tell of was left out. */
  readonly isDone: boolean;
  readonly problems: readonly Problem[];
}

/** Progress of the work with a way to stop it, or what went wrong, with what can be done about it below. */
export function ArchiveRun({
  at,
  leftOut,
  children,
}: {
  readonly at: ReturnType<typeof useArchiveRun>;
  /** What stands over problems of work that was done. */
  readonly leftOut: string;
  readonly children?: ReactNode;
}) {
  const { job, problems, isDone, stop } = at;
  return (
    <>
      {job && (
        <div className="demo-run" role="status">
          <p>{withTimeLeft(ARCHIVE.working(job.progress.done, job.progress.total), job.secondsLeft)}</p>
          <Bar
            share={(job.progress.doneBytes ?? 0) / Math.max(1, job.progress.totalBytes ?? 1)}
            label={ARCHIVE.workingShort}
          />
          <Button onPress={stop}>{ARCHIVE.stop}</Button>
        </div>
      )}
      {problems.length > 0 && (
        <StopNote
          title={isDone ? leftOut : FRAME.trouble}
          advice={problems.map((each) => describeProblem(each, BARE_NAMES))}
        >
          {children}
        </StopNote>
      )}
    </>
  );
}
