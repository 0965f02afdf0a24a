import type { Problem } from '../../../src-core/contract/problem.ts';
import type { Plan } from '../../../src-core/lesson/plan.ts';
import { openEditHistory } from './edit-history.ts';
import type { PlanEdit } from './plan-edit.ts';

/** A plan as it is on the disk; `version` stands for its bytes. */
export interface SavedPlan {
  readonly plan: Plan;
  readonly version: string;
}

/** What the planner shows: the plan with all that was edited, and why the latest was not written. */
export interface PlanDraftState {
  readonly plan: Plan;
  /** Empty: everything shown is on the disk or on its way there. */
  readonly refused: readonly Problem[];
  readonly isSaving: boolean;
}

/** The edits of one plan on their way to the disk, one write after another. */
export interface PlanDraft {
  readonly getState: () => PlanDraftState;
  readonly subscribe: (listener: () => void) => () => void;
  /** Shown at once; written as soon as what came before is. After a refusal both are tried together. */
  readonly change: (edit: PlanEdit) => Promise<void>;
  /** Takes the latest edit back, or brings the one taken back last into force again; false: there is none. */
  readonly undo: () => boolean;
  readonly redo: () => boolean;
  /** Tries once more what was refused. */
  readonly retry: () => Promise<void>;
  /** Throws away what was not written. */
  readonly drop: () => void;
  /** The plan on the disk is another one now. */
  readonly refresh: () => void;
}

/** What a draft stands on. */
export interface PlanDraftParts {
  readonly getSaved: () => SavedPlan;
  /** Writes the plan unless the one on the disk is no longer `base`; what is wrong where it was not written. */
  readonly save: (base: string, plan: Plan) => Promise<readonly Problem[]>;
}

/** Opens the draft of a plan. A refused edit stays in it until it is dropped or an edit after it mends it. */
export function openPlanDraft({ getSaved, save }: PlanDraftParts): PlanDraft {
  const listeners = new Set<() => void>();
  let edits: readonly PlanEdit[] = [];
  let state: PlanDraftState = { plan: getSaved().plan, refused: [], isSaving: false };
  let writing: Promise<void> | null = null;
  const history = openEditHistory();
  const show = (part: Partial<PlanDraftState>) => {
    const next = { ...state, ...part, plan: applyEdits(getSaved().plan, edits) };
    if (isSame(state, next)) return;
    state = next;
    for (const listener of listeners) listener();
  };
  const write = async () => {
    while (edits.length > 0) {
      const written = edits;
      const { plan, version } = getSaved();
      const refused = await save(version, applyEdits(plan, written));
      // What was edited meanwhile may mend what was refused.
      const isMended = edits.length > written.length;
      if (refused.length > 0 && !isMended) return show({ refused, isSaving: false });
      if (refused.length === 0) edits = edits.slice(written.length);
      show({ refused });
    }
    show({ isSaving: false });
  };
  const writeInTurn = () => {
    show({ isSaving: true });
    writing ??= write().finally(() => {
      writing = null;
    });
    return writing;
  };
  const add = (edit: PlanEdit) => {
    edits = [...edits, edit];
    return writeInTurn();
  };
  const step = (edit: PlanEdit | null) => {
    if (edit) void add(edit);
    return edit !== null;
  };
  return {
    getState: () => state,
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    change: (edit) => {
      history.note(state.plan, edit);
      return add(edit);
    },
    undo: () => step(history.undo(state.plan)),
    redo: () => step(history.redo(state.plan)),
    retry: writeInTurn,
    drop: () => {
      edits = [];
      history.clear();
      show({ refused: [] });
    },
    refresh: () => show({}),
  };
}

/** Whether two states look the same, so that nothing is drawn anew for nothing. */
function isSame(one: PlanDraftState, other: PlanDraftState): boolean {
  const areBothTaken = one.refused.length === 0 && other.refused.length === 0;
  return (
    one.plan === other.plan &&
    one.isSaving === other.isSaving &&
    (areBothTaken || one.refused === other.refused)
  );
}

/** The plan after some edits, each made on what the one before left. */
export function applyEdits(plan: Plan, edits: readonly PlanEdit[]): Plan {
  let edited = plan;
  for (const edit of edits) edited = { ...edited, ...edit(edited) };
  return edited;
}
