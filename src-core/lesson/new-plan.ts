import { BUILT_IN_EXERCISES } from './library/built-in.ts';
import { takeExercise } from './library/library.ts';
import { type Plan, planSchema } from './plan.ts';
import { buildRouteOrder, withRoutes } from './routes/plan-routes.ts';
import { suggestRoutes } from './routes/suggest-routes.ts';
import { buildSquadSigns } from './squads/pinnies.ts';

/** What must be known of a lesson before anything is planned. */
export type LessonFacts = Pick<Plan, 'lesson' | 'zone' | 'periods'>;

/** Exercises that a new plan begins with: one each for legs, the whole body, trunk and balance. */
const FIRST_EXERCISES = ['squat-reach', 'side-shuffle', 'plank-tap', 'knee-lift-balance'];

/** Reps that a new plan begins with; few, for they are raised more easily than lowered. */
const FIRST_REPS = 10;

/**
 * A plan to begin with: four stations with exercises of the library, four squads on a cyclic rotation, a rubric of
 * the four usual criteria. Sound as it stands; every word of it is there to be changed.
 */
export function buildNewPlan(facts: LessonFacts): Plan {
  const stations = FIRST_EXERCISES.flatMap((wanted, at) => {
    const exercise = BUILT_IN_EXERCISES.find(({ code }) => code === wanted);
    const code = String.fromCharCode('A'.charCodeAt(0) + at);
    return exercise ? [{ code, place: `Place ${code}`, reps: FIRST_REPS, ...takeExercise(exercise) }] : [];
  });
  const plan = planSchema.parse({
    format: 'routemark-plan',
    version: 2,
    ...facts,
    stations,
    squads: buildSquadSigns(4, []).map((signs) => ({ ...signs, startsAt: 'A', route: ['A'] })),
    rubric: {
      clip: [
        { code: 'place', label: 'Right place', checks: 'place' },
        { code: 'exercise', label: 'Right exercise', checks: 'exercise' },
        { code: 'reps', label: 'Full reps', checks: 'reps' },
        { code: 'together', label: 'Done together', checks: 'together' },
      ],
    },
    orderRule: 'void-clip',
  });
  const routes = suggestRoutes(buildRouteOrder(plan));
  return routes.ok ? withRoutes(plan, routes.value) : plan;
}

/**
 * The same plan for another lesson: another day, and either another code or the next printing of the cards, so that
 * its cards cannot be mistaken for those of the plan it comes from. `code` null keeps the code and counts the printing
 * up; two copies of one plan then have the same, and are told apart by giving one of them another code.
 */
export function buildPlanCopy(
  plan: Plan,
  next: { readonly date: string; readonly code: string | null },
): Plan {
  const { lesson } = plan;
  const cards =
    next.code === null || next.code === lesson.code
      ? { code: lesson.code, revision: lesson.revision + 1 }
      : { code: next.code, revision: 1 };
  return { ...plan, lesson: { ...lesson, ...cards, date: next.date } };
}
