import type { PlanProblem } from '../lesson/lesson-problem.ts';
import { buildNewPlan, buildPlanCopy } from '../lesson/new-plan.ts';
import type { Plan } from '../lesson/plan.ts';
import { buildRouteOrder, keepStarts, withRoutes } from '../lesson/routes/plan-routes.ts';
import type { RouteProblem } from '../lesson/routes/route-problem.ts';
import { type RouteSuggestion, suggestRoutes } from '../lesson/routes/suggest-routes.ts';
import type { SquadsProblem } from '../lesson/squads/squads-problem.ts';
import { type SuggestedSquad, suggestSquads } from '../lesson/squads/suggest-squads.ts';
import { type WalkedPlan, type WalkOptions, walkPlan } from '../lesson/walk/walk-plan.ts';
import { type Outcome, succeed } from '../platform/outcome.ts';
import { readEditedPlan, readPlanShape } from './edit-plan.ts';

export { comparePlans } from '../lesson/compare-plans.ts';
export { BUILT_IN_EXERCISES } from '../lesson/library/built-in.ts';
export { mergeLibraries } from '../lesson/library/library.ts';
export { buildRosterText, parseRosterTable } from '../lesson/roster/roster-table.ts';
export { buildLibraryText, parseLibrary } from '../lesson-file/library-file.ts';
export { parsePlan } from '../lesson-file/plan-file.ts';

/** Routes as a plan asks for them, and the plan with them. */
export interface PlannedRoutes {
  readonly suggestion: RouteSuggestion;
  readonly plan: Plan;
}

/** Routes for a plan as edited; fails where it is none, or with the wish that is to blame. */
export function planRoutes(edited: unknown): Outcome<PlannedRoutes, PlanProblem | RouteProblem> {
  const read = readPlanShape(edited);
  if (!read.ok) return read;
  const found = suggestRoutes(buildRouteOrder(read.value));
  if (!found.ok) return found;
  return succeed({ suggestion: found.value, plan: withRoutes(read.value, found.value) });
}

/** Squads as a plan asks for them, and the plan with them. */
export interface PlannedSquads {
  readonly squads: readonly SuggestedSquad[];
  readonly plan: Plan;
}

/**
 * So many squads for a plan as edited. Squads that stay keep their routes; where squads come or go, routes are made
 * anew, and a squad that gets none for want of stations begins at the first one, for the plan's check to name.
 */
export function planSquads(
  edited: unknown,
  pupils: readonly string[],
  count: number,
): Outcome<PlannedSquads, PlanProblem | SquadsProblem> {
  const read = readPlanShape(edited);
  if (!read.ok) return read;
  const plan = read.value;
  const found = suggestSquads({ pupils, count, present: plan.squads, grouping: plan.grouping });
  if (!found.ok) return found;
  const first = plan.stations[0]?.code ?? '';
  const squads = found.value.map(({ pupils: _, ...signs }) => {
    const present = plan.squads.find(({ code }) => code === signs.code);
    return present ?? { ...signs, startsAt: first, route: [first] };
  });
  const changed = { ...plan, squads, rotation: keepStarts(plan.rotation, squads) };
  const routes = squads.length === plan.squads.length ? null : planRoutes(changed);
  return succeed<PlannedSquads, SquadsProblem>(
    { squads: found.value, plan: routes?.ok ? routes.value.plan : changed },
    found.problems,
  );
}

/** Facts that are replaced by the teacher's at once. */
const NO_FACTS = {
  lesson: {
    code: 'NEW',
    revision: 1,
    title: '-',
    school: '-',
    className: '-',
    date: '2000-01-01',
    period: 'p1',
  },
  zone: 'UTC',
  periods: [{ code: 'p1', start: '09:00', end: '10:00' }],
};

/** What a new lesson must say of itself; checked here, so that it may come from anywhere. */
export interface NewLessonFacts {
  readonly lesson: unknown;
  readonly zone: unknown;
  readonly periods: unknown;
}

/** A plan to begin with, for these facts; fails where they make no plan that could be opened. */
export function planNewLesson(facts: NewLessonFacts): Outcome<Plan, PlanProblem> {
  return readEditedPlan({ ...buildNewPlan(NO_FACTS), ...facts });
}

/** A plan for another day; fails where day or code make no plan. */
export function planLessonCopy(
  plan: Plan,
  next: { readonly date: string; readonly code: string | null },
): Outcome<Plan, PlanProblem> {
  return readEditedPlan(buildPlanCopy(plan, next));
}

/** A simulated class on the routes of a plan as edited. */
export function walkEditedPlan(
  edited: unknown,
  options: { readonly [Name in keyof WalkOptions]?: WalkOptions[Name] | undefined },
): Outcome<WalkedPlan, PlanProblem> {
  const read = readPlanShape(edited);
  if (!read.ok) return read;
  const given = Object.fromEntries(Object.entries(options).filter(([, value]) => value !== undefined));
  return succeed(walkPlan(read.value, given));
}
