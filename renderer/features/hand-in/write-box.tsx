import type { LessonNames } from '../../client/lesson-names.ts';
import { HAND_IN } from '../../text/english/hand-in.ts';
import { describeProblem } from '../../text/english/problems.ts';
import { Button } from '../../ui/button.tsx';
import { StopNote } from '../../ui/stop-note.tsx';
import type { Writing } from './use-writing.ts';

/** The write button: an empty dashed box until flags are settled or “not final” is ticked. */
export function WriteBox({
  openFlags,
  isTicked,
  onTick,
  fileName,
  canWrite,
  writing,
  names,
  onWrite,
}: {
  readonly openFlags: number;
  readonly isTicked: boolean;
  readonly onTick: (isTicked: boolean) => void;
  readonly fileName: string;
  readonly canWrite: boolean;
  readonly writing: Writing;
  readonly names: LessonNames;
  readonly onWrite: (replace: boolean) => void;
}) {
  const { state, path, problems } = writing;
  const isThere = problems.some(({ code }) => code === 'file-exists');
  return (
    <div className="fin">
      {state === 'failed' && (
        <StopNote title={HAND_IN.failed} advice={problems.map((problem) => describeProblem(problem, names))}>
          {isThere && <Button onPress={() => onWrite(true)}>{HAND_IN.replace}</Button>}
        </StopNote>
      )}
      <p role="status" className={state === 'written' ? 'read' : 'vh'}>
        {state === 'written' && path ? HAND_IN.written(path) : ''}
      </p>
      {openFlags > 0 && (
        <label>
          <input
            type="checkbox"
            className="ck"
            checked={isTicked}
            onChange={({ currentTarget }) => onTick(currentTarget.checked)}
          />
          {HAND_IN.notFinal(openFlags)}
        </label>
      )}
      <Button
        look="ink"
        className="write"
        isDisabled={!canWrite || state === 'writing'}
        onPress={() => onWrite(false)}
      >
        {state === 'writing' ? HAND_IN.writing : HAND_IN.write(fileName)}
      </Button>
    </div>
  );
}
