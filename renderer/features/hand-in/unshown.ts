import type { LessonView } from '../../../src-core/contract/lesson-view.ts';

/** Names of the squads of which no still is printed: one of them is on the do-not-film list. */
export function listUnshown({ plan, unshown }: Pick<LessonView, 'plan' | 'unshown'>): readonly string[] {
  return plan.squads.filter(({ code }) => unshown.includes(code)).map(({ name }) => name);
}
