import { useRef, useState } from 'react';
import type { DeskClient } from '../../../src-core/contract/desk-client.ts';
import type { LessonId } from '../../../src-core/contract/desk-view.ts';
import type { Problem } from '../../../src-core/contract/problem.ts';
import type { JobProgress } from '../../client/lesson-state.ts';
import { withTimeLeft } from '../../text/english/amounts.ts';
import { START } from '../../text/english/window.ts';
import { Button } from '../../ui/button.tsx';
import { Bar } from '../../ui/marks.tsx';

/** The demo lesson, one press away; the first press films it. */
export function DemoCard({
  client,
  isFirst,
  onOpen,
  onTroubles,
}: {
  readonly client: DeskClient;
  /** No lesson was opened before, so this is what to begin with. */
  readonly isFirst: boolean;
  readonly onOpen: (lesson: LessonId) => void;
  readonly onTroubles: (problems: readonly Problem[]) => void;
}) {
  const [job, setJob] = useState<JobProgress | null>(null);
  const [isAsked, setAsked] = useState(false);
  const controller = useRef<AbortController | null>(null);
  const open = async () => {
    const stopper = new AbortController();
    controller.current = stopper;
    setAsked(true);
    const reply = await client.request(
      'openDemo',
      {},
      {
        signal: stopper.signal,
        onProgress: (progress, secondsLeft) => setJob({ progress, secondsLeft }),
      },
    );
    setAsked(false);
    setJob(null);
    if (!reply.ok) onTroubles(reply.problems.filter(({ code }) => code !== 'call-cancelled'));
    else if (reply.value.update.kind === 'whole') onOpen(reply.value.update.view.lesson);
  };
  return (
    <section className="sheet demo" aria-label={START.demoHead}>
      <h2>{START.demoHead}</h2>
      <p className="read">{START.demoText}</p>
      {isAsked ? (
        <div className="demo-run" role="status">
          <p>{job ? describe(job) : START.opening}</p>
          {job && <Bar share={job.progress.done / Math.max(1, job.progress.total)} label={START.demoWait} />}
          {job && <p className="pen">{START.demoWait}</p>}
          <Button onPress={() => controller.current?.abort()}>{START.stop}</Button>
        </div>
      ) : (
        <Button look={isFirst ? 'ink' : 'plain'} onPress={open} isAutoFocused={isFirst}>
          {START.openDemo}
        </Button>
      )}
    </section>
  );
}

function describe({ progress: { done, total }, secondsLeft }: JobProgress): string {
  return withTimeLeft(START.demoFilming(done, total), secondsLeft);
}
