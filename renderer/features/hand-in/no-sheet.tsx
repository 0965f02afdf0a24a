import type { Problem } from '../../../src-core/contract/problem.ts';
import type { LessonNames } from '../../client/lesson-names.ts';
import { HAND_IN } from '../../text/english/hand-in.ts';
import { describeProblem } from '../../text/english/problems.ts';
import { Button } from '../../ui/button.tsx';
import { Sheet } from '../../ui/sheet.tsx';

/** No sheet to show: it is being laid out, or there is nothing to lay out yet. */
export function NoSheet({
  isAsking,
  problems,
  names,
  goToBringIn,
}: {
  readonly isAsking: boolean;
  readonly problems: readonly Problem[];
  readonly names: LessonNames;
  readonly goToBringIn: () => void;
}) {
  if (isAsking) {
    return (
      <Sheet label={HAND_IN.asking} className="no-sheet hatch">
        <p className="read" role="status">
          {HAND_IN.asking}
        </p>
      </Sheet>
    );
  }
  const others = problems.filter(({ code }) => code !== 'clips-unread' && code !== 'hand-in-flags-open');
  return (
    <Sheet label={HAND_IN.noSheet} className="no-sheet">
      <h2>{HAND_IN.noSheet}</h2>
      {others.length === 0 && <p className="read">{HAND_IN.noSheetText}</p>}
      {others.map((problem) => {
        const { what, todo } = describeProblem(problem, names);
        return (
          <p key={what} className="read">
            {what} {todo}
          </p>
        );
      })}
      <Button look="ink" onPress={goToBringIn}>
        {HAND_IN.toBringIn}
      </Button>
    </Sheet>
  );
}
