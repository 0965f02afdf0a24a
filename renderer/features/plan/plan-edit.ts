import type { Plan } from '../../../src-core/lesson/plan.ts';

/** A change of the plan as it is when its turn comes, so that no other change is lost: the parts that differ. */
export type PlanEdit = (plan: Plan) => Partial<Plan>;
