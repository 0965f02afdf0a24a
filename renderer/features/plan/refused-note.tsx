import type { Problem } from '../../../src-core/contract/problem.ts';
import type { LessonNames } from '../../client/lesson-names.ts';
import { PLAN } from '../../text/english/plan-step.ts';
import { describeProblem } from '../../text/english/problems.ts';
import { Button } from '../../ui/button.tsx';
import { StopNote } from '../../ui/stop-note.tsx';

/** Why the latest edits were not written; they stay on the sheet until they are mended or let go. */
export function RefusedNote({
  refused,
  names,
  onRetry,
  onDrop,
}: {
  readonly refused: readonly Problem[];
  readonly names: LessonNames;
  readonly onRetry: () => void;
  readonly onDrop: () => void;
}) {
  if (refused.length === 0) return null;
  const advice = refused.map((problem) => describeProblem(problem, names));
  return (
    <StopNote title={PLAN.notSaved} advice={[...advice, { what: PLAN.kept, todo: null }]}>
      <Button look="ink" onPress={onRetry}>
        {PLAN.tryAgain}
      </Button>
      <Button onPress={onDrop}>{PLAN.letGo}</Button>
    </StopNote>
  );
}
