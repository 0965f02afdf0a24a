import type { Plan } from '../lesson/plan.ts';

/** Words that the teacher or the roster gave, and where they stand there: a problem about them can then say so. */
export interface Said {
  readonly text: string;
  /** Such as `stations[2].clue`, or `roster k-0412`. */
  readonly field: string;
}

/** Words of a field that may be left out; null where it is. */
export function findSaid(text: string | undefined, field: string): Said | null {
  return text === undefined ? null : { text, field };
}

/** Which lesson and class a sheet is for. */
export function getHeading({ lesson }: Pick<Plan, 'lesson'>): Said {
  return { text: `${lesson.title}, ${lesson.className}`, field: 'lesson.title' };
}
