import { useEffect, useState } from 'react';
import type { LessonView } from '../../../src-core/contract/lesson-view.ts';
import type { LessonDesk } from '../../client/lesson-desk.ts';
import type { LessonState } from '../../client/lesson-state.ts';
import { REVIEW } from '../../text/english/review.ts';
import { Button } from '../../ui/button.tsx';
import { changePreferences, usePreferences } from '../../ui/preferences.ts';

/** How often progress is said aloud; it is shown as it comes. */
const SAY_EVERY_MS = 5000;

/**
 * How far watching the clips in the background has come, with the way to stop it and to go on; nothing when done. What
 * is left shows whether it begins by itself, and lets the teacher choose.
 */
export function WatchLine({
  lesson,
  state,
  desk,
}: {
  readonly lesson: LessonView;
  readonly state: LessonState;
  readonly desk: LessonDesk;
}) {
  const { watching } = state;
  const { isWatchingByItself } = usePreferences();
  const words = watching && describe(watching.progress, watching.secondsLeft);
  const said = useSaidSometimes(words ?? '');
  if (watching) {
    return (
      <p className="watching">
        <span className="hatch" aria-hidden="true" />
        <span className="num">{words}</span>
        <Button look="bare" onPress={watching.stop}>
          {REVIEW.stopWatching}
        </Button>
        <span className="vh" role="status">
          {said}
        </span>
      </p>
    );
  }
  const left = countUnwatched(lesson);
  if (left === 0 || lesson.reading.state !== 'read') return null;
  return (
    <p className="watching">
      <span>{REVIEW.unwatched(left)}</span>
      <Button look="bare" onPress={() => void desk.watchClips()}>
        {REVIEW.watch}
      </Button>
      <label>
        <input
          type="checkbox"
          checked={isWatchingByItself}
          onChange={({ target }) => changePreferences({ isWatchingByItself: target.checked })}
        />{' '}
        {REVIEW.watchByItself}
      </label>
    </p>
  );
}

function describe(
  { done, total }: { readonly done: number; readonly total: number },
  left: number | null,
): string {
  const words = REVIEW.watching(done, total);
  return left === null || left === 0 ? words : `${words}, ${REVIEW.watchingLeft(left)}`;
}

/** Films that count for a slot and were not watched whole. */
function countUnwatched({ clips }: LessonView): number {
  return clips.filter(({ criteria, holds, seen }) => criteria && holds === 'video' && seen.watched === 'no')
    .length;
}

function useSaidSometimes(words: string): string {
  const [said, setSaid] = useState(words);
  const [beat, setBeat] = useState(0);
  useEffect(() => {
    const timer = setInterval(() => setBeat((before) => before + 1), SAY_EVERY_MS);
    return () => clearInterval(timer);
  }, []);
  // biome-ignore lint/correctness/useExhaustiveDependencies: said anew on the beat of the timer alone
  useEffect(() => setSaid(words), [beat]);
  return said;
}
