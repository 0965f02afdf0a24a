import type { LessonNames } from '../../client/lesson-names.ts';
import { HAND_IN } from '../../text/english/hand-in.ts';
import { PAPER_KIND } from '../../text/english/hand-in-paper.ts';
import { describeProblem } from '../../text/english/problems.ts';
import { Button } from '../../ui/button.tsx';
import { Bar } from '../../ui/marks.tsx';
import { StopNote } from '../../ui/stop-note.tsx';
import { isPaper } from './file-names.ts';
import type { Marks } from './use-marks.ts';
import type { Writing } from './use-writing.ts';

/** The write button: an empty dashed box until flags are settled or “not final” is ticked. */
export function WriteBox({ marks, names }: { readonly marks: Marks; readonly names: LessonNames }) {
  const { openFlags, isTicked, setTicked, fileName, canWrite, writing, write, choice, isThere } = marks;
  const { state, problems } = writing;
  const advice = problems.map((problem) => describeProblem(problem, names));
  return (
    <div className="fin">
      {state === 'failed' && (
        <StopNote title={HAND_IN.failed} advice={advice}>
          {isThere && <Button onPress={() => write(true)}>{HAND_IN.replace}</Button>}
        </StopNote>
      )}
      <p role="status" className={state === 'written' ? 'read' : 'vh'}>
        {describeWritten(writing)}
      </p>
      {state === 'written' && advice.length > 0 && (
        <ul className="notes" aria-label={HAND_IN.toKnow}>
          {[...new Map(advice.map((each) => [each.what, each])).values()].map(({ what, todo }) => (
            <li key={what}>
              <b>{what}</b> {todo}
            </li>
          ))}
        </ul>
      )}
      <Drawing writing={writing} />
      {openFlags > 0 && (
        <label>
          <input
            type="checkbox"
            className="ck"
            checked={isTicked}
            onChange={({ currentTarget }) => setTicked(currentTarget.checked)}
          />
          {isPaper(choice.kind) ? HAND_IN.notFinalPaper(openFlags) : HAND_IN.notFinal(openFlags)}
        </label>
      )}
      <Button
        look="ink"
        className="write"
        isDisabled={!canWrite || state === 'writing'}
        onPress={() => write(false)}
      >
        {state === 'writing' ? HAND_IN.writing : HAND_IN.write(fileName)}
      </Button>
    </div>
  );
}

/** How far the pages are, with the way to stop: stills of many clips take their time. */
function Drawing({ writing: { progress, stop } }: { readonly writing: Writing }) {
  if (!progress) return null;
  const { step, done, total } = progress;
  return (
    <div className="demo-run" role="status">
      <p>{step === 'stills' ? PAPER_KIND.cutting(done, total) : PAPER_KIND.drawing}</p>
      <Bar share={step === 'stills' ? done / Math.max(1, total) : 1} label={PAPER_KIND.drawing} />
      <Button onPress={stop}>{PAPER_KIND.stop}</Button>
    </div>
  );
}

function describeWritten({ state, path, pageCount }: Writing): string {
  if (state !== 'written' || path === null) return '';
  return pageCount === null ? HAND_IN.written(path) : PAPER_KIND.printed(path, pageCount);
}
