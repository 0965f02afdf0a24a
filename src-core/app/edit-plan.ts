import { checkPlan } from '../lesson/check-plan.ts';
import { checkReadiness } from '../lesson/check-readiness.ts';
import type { LessonProblem, PlanProblem } from '../lesson/lesson-problem.ts';
import type { Plan } from '../lesson/plan.ts';
import { parsePlan } from '../lesson-file/plan-file.ts';
import { fail, type Outcome } from '../platform/outcome.ts';
import { isGraveSlip } from './open-lesson.ts';

export { checkReadiness } from '../lesson/check-readiness.ts';
export { findLooseEnds } from '../lesson/find-loose-ends.ts';
export { buildPlanText } from '../lesson-file/plan-file.ts';

/** Any JSON as a plan, by its shape alone: what its parts mean together may still be wrong. */
export function readPlanShape(edited: unknown): Outcome<Plan, PlanProblem> {
  // The same way in as a file's, so that nothing is taken here that would be refused on the next opening.
  return parsePlan(JSON.stringify(edited) ?? '');
}

/**
 * A plan as edited, whatever it is, as a plan; what is wrong with its parts together is among the problems. Fails
 * where it could not be opened again.
 */
export function readEditedPlan(edited: unknown): Outcome<Plan, PlanProblem> {
  const parsed = readPlanShape(edited);
  if (!parsed.ok) return parsed;
  const slips = checkWholePlan(parsed.value);
  return slips.some(isGraveSlip) ? fail(...slips) : { ...parsed, problems: [...parsed.problems, ...slips] };
}

/** All that is wrong with a plan, for marking and for class. */
export function checkWholePlan(plan: Plan): readonly PlanProblem[] {
  return [...checkPlan(plan), ...checkReadiness(plan)];
}

/** All that is wrong with a plan as edited. */
export function checkEditedPlan(edited: unknown): readonly LessonProblem[] {
  return readEditedPlan(edited).problems;
}
