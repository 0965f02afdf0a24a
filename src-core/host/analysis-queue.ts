import type { EvidenceProblem } from '../evidence/evidence-problem.ts';
import type { AnalysisResult, AnalysisTask } from './analysis-task.ts';

/** How one task is queued. */
export interface TaskOptions {
  /** Larger goes first; 0 unless given. A queue that others share may pass over it. */
  readonly priority?: number;
  readonly signal?: AbortSignal;
}

/** What became of a task: its result, or why the analysis broke off, which touches no other clip. */
export type TaskOutcome<Kind extends AnalysisTask['kind']> =
  | ({ readonly ok: true } & AnalysisResult<Kind>)
  | { readonly ok: false; readonly problem: EvidenceProblem };

/** Where pieces of analysis go: to threads of this process, or over a queue to workers anywhere. */
export interface AnalysisQueue {
  readonly run: <Task extends AnalysisTask>(
    task: Task,
    options?: TaskOptions,
  ) => Promise<TaskOutcome<Task['kind']>>;
  /** Ends what belongs to this process; its tasks under way break off. */
  readonly close: () => Promise<void>;
}
