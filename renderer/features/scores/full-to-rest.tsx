import type { LessonView } from '../../../src-core/contract/lesson-view.ts';
import type { JournalAct } from '../../../src-core/marking/journal-event.ts';
import type { LessonDesk } from '../../client/lesson-desk.ts';
import { SCORES } from '../../text/english/scores.ts';
import { Button } from '../../ui/button.tsx';

/** One press for all squad criteria that have no points yet: most squads earn them all, and the others were given theirs. */
export function FullToRest({ lesson, desk }: { readonly lesson: LessonView; readonly desk: LessonDesk }) {
  const acts = listFull(lesson);
  if (acts.length === 0) return null;
  return <Button onPress={() => void desk.decide(...acts)}>{SCORES.fullToRest(acts.length)}</Button>;
}

function listFull({ squadScores }: LessonView): readonly JournalAct[] {
  return squadScores.flatMap(({ squad, criteria }) =>
    criteria
      .filter(({ decided }) => decided === null)
      .map(({ criterion, max }): JournalAct => ({ kind: 'squad-marked', squad, criterion, points: max })),
  );
}
