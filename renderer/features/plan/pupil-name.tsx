import { type RefObject, useEffect, useRef } from 'react';
import type { Pupil } from '../../../src-core/lesson/roster.ts';

/** Id of the pupil who was sent to another squad and takes the focus along; null: nobody is on the way. */
export type MovingPupil = RefObject<string | null>;

/** A pupil's name in the list of a squad. Who was moved has the focus again as soon as they stand in the new list. */
export function PupilName({
  pupil: { id, given, family },
  moving,
}: {
  readonly pupil: Pupil;
  readonly moving: MovingPupil;
}) {
  const name = useRef<HTMLSpanElement>(null);
  useEffect(() => {
    if (moving.current !== id) return;
    moving.current = null;
    // The list that was left gives the focus to the next pupil at first.
    requestAnimationFrame(() => name.current?.closest<HTMLElement>('[data-pupil]')?.focus());
  }, [id, moving]);
  return (
    <span ref={name}>
      {given} {family}
    </span>
  );
}
