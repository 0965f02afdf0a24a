import type { LessonNames } from '../../client/lesson-names.ts';
import { describeProblem } from '../../text/english/problems.ts';
import { REVIEW } from '../../text/english/review.ts';
import { Button } from '../../ui/button.tsx';
import type { Playable } from './use-playable.ts';

/** Stands over a film that this window cannot play: how far its copy is, or why there is none and what is safe. */
export function FilmCover({ playable, names }: { readonly playable: Playable; readonly names: LessonNames }) {
  const { state, secondsLeft, problems, tryAgain } = playable;
  if (state === 'making') {
    return (
      <div className="cover hatch" role="status">
        <p>
          {REVIEW.makingProxy} {secondsLeft !== null && REVIEW.proxyLeft(secondsLeft)}
        </p>
      </div>
    );
  }
  return (
    <div className="cover" role="alert">
      <b>{REVIEW.filmFailed}</b>
      {problems.map((problem) => {
        const { what, todo } = describeProblem(problem, names);
        return (
          <p key={what}>
            {what} {todo}
          </p>
        );
      })}
      <p>{REVIEW.filmSafe}</p>
      <Button onPress={tryAgain}>{REVIEW.tryAgain}</Button>
    </div>
  );
}
