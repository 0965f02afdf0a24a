import type { LessonView } from '../../../src-core/contract/lesson-view.ts';

/** Names of the squads of which no still is printed: a pupil of theirs is on the do-not-film list. */
export function listUnshown({ plan, pupils }: Pick<LessonView, 'plan' | 'pupils'>): readonly string[] {
  return plan.squads
    .filter(({ code }) => pupils.some(({ squad, stills }) => squad === code && !stills))
    .map(({ name }) => name);
}
