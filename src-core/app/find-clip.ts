import type { ClipId } from '../matching/observation.ts';
import type { ClipReading } from './clip-reading.ts';
import type { GradedLesson } from './graded-lesson.ts';

/** Every clip of a graded lesson, in routes and set aside. */
export function listClips(graded: GradedLesson): readonly ClipReading[] {
  return [...graded.squads.flatMap(({ clips }) => clips), ...graded.aside].map(({ reading }) => reading);
}

/**
 * The one clip that a written name means: its id or the beginning of it, its path below the folder of clips or
 * from farther up, or its file name. Null where none or several fit.
 */
export function findClip(graded: GradedLesson, written: string): ClipReading | null {
  const clips = listClips(graded);
  const name = written.normalize();
  const isPath = (path: string) => path.normalize() === name || name.endsWith(`/${path.normalize()}`);
  const fitting = [
    ({ id }: ClipReading) => id === name,
    ({ copies }: ClipReading) => copies.some(({ file }) => isPath(file.path)),
    ({ copies }: ClipReading) => copies.some(({ file }) => file.name.normalize() === name),
    ({ id }: ClipReading) => name.length >= 4 && id.startsWith(name),
  ]
    .map((fits) => clips.filter(fits))
    .find((found) => found.length > 0);
  return fitting?.length === 1 ? (fitting[0] ?? null) : null;
}

/** What is shown for a clip's criteria, by code; criteria without an answer are null. */
export function getShownAnswers(
  graded: GradedLesson,
  clip: ClipId,
): ReadonlyMap<string, boolean | null> | null {
  const slot = graded.score.squads.flatMap(({ slots }) => slots).find((one) => one.clip?.clip === clip);
  return slot?.clip ? new Map(slot.clip.criteria.map(({ criterion, shown }) => [criterion, shown])) : null;
}
