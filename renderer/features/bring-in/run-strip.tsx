import { useEffect, useState } from 'react';
import type { LessonView } from '../../../src-core/contract/lesson-view.ts';
import type { RunningJob } from '../../client/lesson-state.ts';
import { BRING_IN } from '../../text/english/bring-in.ts';
import { Button } from '../../ui/button.tsx';
import { Bar } from '../../ui/marks.tsx';
import { Sheet } from '../../ui/sheet.tsx';
import type { BringState } from './bring-job.ts';
import { describeBring, describeReading } from './run-words.ts';

/** How often progress is said aloud; it is shown as it comes. */
const SAY_EVERY_MS = 5000;

/** How far reading and copying have come, and the way to stop. */
export function RunStrip({
  bring,
  reading,
  lesson,
}: {
  readonly bring: BringState;
  readonly reading: RunningJob | null;
  readonly lesson: LessonView;
}) {
  const parts = [describeReading(lesson.reading, reading), describeBring(bring)].filter(
    (part) => part !== null,
  );
  const said = useSaidSometimes(parts.map(({ words }) => words).join('. '));
  const stop = bring.kind === 'running' ? bring.stop : reading?.stop;
  return (
    <Sheet label={BRING_IN.progress} className="run">
      {parts.map(({ words, share, key }) => (
        <div key={key} className="run-part">
          <span className="num">{words}</span>
          <Bar share={share} label={words} />
        </div>
      ))}
      {stop && <Button onPress={stop}>{BRING_IN.stop}</Button>}
      <span className="vh" role="status">
        {said}
      </span>
    </Sheet>
  );
}

function useSaidSometimes(words: string): string {
  const [said, setSaid] = useState(words);
  const [at, setAt] = useState(0);
  useEffect(() => {
    const timer = setInterval(() => setAt((before) => before + 1), SAY_EVERY_MS);
    return () => clearInterval(timer);
  }, []);
  // biome-ignore lint/correctness/useExhaustiveDependencies: said anew on the beat of the timer alone.
  useEffect(() => setSaid(words), [at]);
  return said;
}
