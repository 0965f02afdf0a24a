import type { LessonNames } from '../../client/lesson-names.ts';
import { BRING_IN } from '../../text/english/bring-in.ts';
import { describeProblem } from '../../text/english/problems.ts';
import { Button } from '../../ui/button.tsx';
import { StopNote } from '../../ui/stop-note.tsx';
import type { BringState } from './bring-job.ts';
import type { Bring } from './use-bring.ts';

/** Copying stopped: what happened, that nothing is lost, and the ways to go on. */
export function BringStopped({
  bring,
  names,
  ways,
  onPutAway,
}: {
  readonly bring: Extract<BringState, { kind: 'stopped' }>;
  readonly names: LessonNames;
  readonly ways: Bring;
  readonly onPutAway: () => void;
}) {
  const { problems, goOn, folder } = bring;
  const isFull = problems.some(({ code }) => code === 'disk-too-small');
  return (
    <StopNote title={BRING_IN.stopped} advice={problems.map((problem) => describeProblem(problem, names))}>
      {folder && isFull && (
        <Button look="ink" onPress={() => ways.readInPlace(folder)}>
          {BRING_IN.readInPlace}
        </Button>
      )}
      <Button look={folder && isFull ? 'plain' : 'ink'} onPress={() => void goOn()}>
        {BRING_IN.goOn}
      </Button>
      <Button onPress={() => ways.choose('copy')}>{BRING_IN.another}</Button>
      <Button look="bare" onPress={onPutAway}>
        {BRING_IN.putAway}
      </Button>
    </StopNote>
  );
}
