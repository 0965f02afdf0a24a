import type { LessonView } from '../../src-core/contract/lesson-view.ts';
import type { Problem } from '../../src-core/contract/problem.ts';
import type { Progress } from '../../src-core/contract/progress.ts';

/** Whose name stands in the journal beside what the lesson’s own marker decides. */
export const TEACHER = 'teacher';

/** How far a long piece of work has come. */
export interface JobProgress {
  readonly progress: Progress;
  /** Null: not to be told yet. */
  readonly secondsLeft: number | null;
}

/** A long piece of work of the open lesson. */
export interface RunningJob extends JobProgress {
  readonly stop: () => void;
}

/** The open lesson and what is going on with it. */
export interface LessonState {
  readonly view: LessonView;
  /** Reading stamps and searching pictures; null: not now. */
  readonly reading: RunningJob | null;
  /** Watching clips whole, in the background; null: not now. */
  readonly watching: RunningJob | null;
  /** Decisions that are not acknowledged yet. */
  readonly waiting: number;
  /** What did not work; shown until the teacher puts it away. */
  readonly troubles: readonly Problem[];
  /** False: the program behind the window does not answer. */
  readonly isReached: boolean;
}
