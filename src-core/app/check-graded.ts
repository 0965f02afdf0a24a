import { checkHandIn, type HandInCheck } from '../gradebook/hand-in-check.ts';
import type { GradedLesson } from './graded-lesson.ts';

/** The clips of a graded lesson, and the lesson. */
interface GradedClips extends Pick<GradedLesson, 'lesson' | 'aside'> {
  readonly squads: readonly { readonly clips: readonly unknown[] }[];
}

/**
 * When the films were deleted that a lesson's marks are worked out from, ISO 8601 in UTC; null where there are clips,
 * or none were deleted.
 */
export function findFilmsDeleted({ lesson, squads, aside }: GradedClips): string | null {
  const hasClips = aside.length > 0 || squads.some(({ clips }) => clips.length > 0);
  return hasClips ? null : lesson.filmsDeletedAt;
}

/** Whether a lesson's marks may be handed in; see {@link checkHandIn}. */
export function checkGraded(graded: GradedLesson, evenWithOpenFlags: boolean): HandInCheck {
  return checkHandIn(graded.score, { evenWithOpenFlags, filmsDeletedAt: findFilmsDeleted(graded) });
}
