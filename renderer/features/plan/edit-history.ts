import type { Plan } from '../../../src-core/lesson/plan.ts';
import type { PlanEdit } from './plan-edit.ts';

/** The edits that can be taken back and brought into force again, latest first. */
export interface EditHistory {
  /** Remembers how the parts that an edit is about to change are before it; what was taken back is forgotten. */
  readonly note: (plan: Plan, edit: PlanEdit) => void;
  /** The edit that takes the latest back; null: there is none. */
  readonly undo: (plan: Plan) => PlanEdit | null;
  /** The edit that brings back what was taken back last; null: there is none. */
  readonly redo: (plan: Plan) => PlanEdit | null;
  readonly clear: () => void;
}

/** How many edits can be taken back; the lesson's kept versions go further. */
const MOST_STEPS = 200;

/** An empty history; it keeps the parts that edits changed, so that nothing else is taken back with them. */
export function openEditHistory(): EditHistory {
  let past: readonly Partial<Plan>[] = [];
  let future: readonly Partial<Plan>[] = [];
  return {
    note: (plan, edit) => {
      past = [...past, pickBefore(plan, edit)].slice(-MOST_STEPS);
      future = [];
    },
    undo: (plan) => {
      const parts = past.at(-1);
      if (!parts) return null;
      past = past.slice(0, -1);
      future = [...future, pickBefore(plan, () => parts)];
      return () => parts;
    },
    redo: (plan) => {
      const parts = future.at(-1);
      if (!parts) return null;
      future = future.slice(0, -1);
      past = [...past, pickBefore(plan, () => parts)];
      return () => parts;
    },
    clear: () => {
      [past, future] = [[], []];
    },
  };
}

function pickBefore(plan: Plan, edit: PlanEdit): Partial<Plan> {
  const names = Object.keys(edit(plan)) as (keyof Plan)[];
  return Object.fromEntries(names.map((name) => [name, plan[name]]));
}
