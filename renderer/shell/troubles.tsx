import type { LessonDesk } from '../client/lesson-desk.ts';
import type { LessonNames } from '../client/lesson-names.ts';
import type { LessonState } from '../client/lesson-state.ts';
import { describeProblem } from '../text/english/problems.ts';
import { FRAME } from '../text/english/window.ts';
import { Button } from '../ui/button.tsx';
import { StopNote } from '../ui/stop-note.tsx';

/** What did not work lately, until it is put away. */
export function Troubles({
  state,
  desk,
  names,
}: {
  readonly state: LessonState;
  readonly desk: LessonDesk;
  readonly names: LessonNames;
}) {
  if (state.troubles.length === 0) return null;
  const advice = state.troubles.map((problem) => describeProblem(problem, names));
  const distinct = [...new Map(advice.map((each) => [each.what, each])).values()];
  return (
    <StopNote title={FRAME.trouble} advice={distinct}>
      <Button onPress={desk.putAway}>{FRAME.putAway}</Button>
    </StopNote>
  );
}
