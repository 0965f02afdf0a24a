import { type ReactNode, useEffect, useRef, useState } from 'react';
import type { Problem } from '../../src-core/contract/problem.ts';
import type { Progress } from '../../src-core/contract/progress.ts';
import { BARE_NAMES } from '../client/lesson-names.ts';
import { ARCHIVE } from '../text/english/archive.ts';
import { describeProblem } from '../text/english/problems.ts';
import { FRAME } from '../text/english/window.ts';
import { Button } from './button.tsx';
import { Bar } from './marks.tsx';
import { StopNote } from './stop-note.tsx';

/** How a piece of work is watched and stopped. */
export interface RunWatch {
  readonly signal: AbortSignal;
  readonly onProgress: (progress: Progress) => void;
}

/** One long piece of work in a slip, which ends with the slip, and what went wrong with it. */
export function useArchiveRun() {
  const [progress, setProgress] = useState<Progress | null>(null);
  const [outcome, setOutcome] = useState<Outcome>({ isDone: false, problems: [] });
  const stopper = useRef<AbortController | null>(null);
  const stop = () => stopper.current?.abort();
  useEffect(() => () => stopper.current?.abort(), []);
  /** Runs work; gives its value, or null where there is none, and shows why. */
  const run = async <Value,>(
    work: (
      watch: RunWatch,
    ) => Promise<
      | { readonly ok: true; readonly value: Value; readonly problems: readonly Problem[] }
      | { readonly ok: false; readonly problems: readonly Problem[] }
    >,
  ): Promise<Value | null> => {
    const controller = new AbortController();
    stopper.current = controller;
    setOutcome({ isDone: false, problems: [] });
    setProgress({ step: 'copy', done: 0, total: 0 });
    const onProgress = (now: Progress) => stopper.current === controller && setProgress(now);
    const reply = await work({ signal: controller.signal, onProgress });
    setProgress(null);
    const problems = reply.problems.filter(({ code }) => code !== 'call-cancelled');
    setOutcome({ isDone: reply.ok, problems });
    return reply.ok ? reply.value : null;
  };
  return { progress, ...outcome, run, stop };
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
  const { progress, problems, isDone, stop } = at;
  return (
    <>
      {progress && (
        <div className="demo-run" role="status">
          <p>{ARCHIVE.working(progress.done, progress.total)}</p>
          <Bar
            share={(progress.doneBytes ?? 0) / Math.max(1, progress.totalBytes ?? 1)}
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
