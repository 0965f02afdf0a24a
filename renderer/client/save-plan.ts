import type { LessonView } from '../../src-core/contract/lesson-view.ts';
import type { Plan } from '../../src-core/lesson/plan.ts';
import type { LessonDesk } from './lesson-desk.ts';

/**
 * Writes the lesson's plan with some parts changed, unless somebody else has changed it since it was shown. True where
 * it was written; otherwise what is wrong is reported above the screen.
 */
export async function savePlan(
  desk: LessonDesk,
  lesson: LessonView,
  change: Partial<Plan>,
): Promise<boolean> {
  const plan = { ...lesson.plan, ...change };
  const reply = await desk.ask('savePlan', { base: lesson.planVersion, plan });
  if (!reply.ok) desk.report(reply.problems);
  return reply.ok;
}
