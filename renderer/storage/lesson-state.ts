import type { LessonView } from '../../src-core/contract/lesson-view.ts';
import type { Problem } from '../../src-core/contract/problem.ts';

/** A lesson as the page shows it, and how its decisions stand with the host. */
export interface LessonState {
  /** With everything folded in that waits to be recorded; null until something is known. */
  readonly view: LessonView | null;
  /** Decisions that the host has not acknowledged yet. */
  readonly waiting: number;
  /** `away`: the host does not answer; decisions are kept and sent when it does. */
  readonly contact: 'here' | 'away';
  /** Why the latest decisions wait although the host answers, such as a full disk; empty when they do not. */
  readonly held: readonly Problem[];
  /** Decisions that the host would not record, until the teacher has seen it. */
  readonly refused: readonly Problem[];
}

/** What is shown before anything was kept, asked or decided. */
export const EMPTY_STATE: LessonState = {
  view: null,
  waiting: 0,
  contact: 'here',
  held: [],
  refused: [],
};
