import * as z from 'zod';
import type { MarkingComparison } from '../marking/agreement/compare-markings.ts';
import { call } from './call.ts';
import { carry } from './carried.ts';
import { lessonIdSchema } from './desk-view.ts';
import type { LessonUpdate } from './lesson-update.ts';
import type { Problem } from './problem.ts';

const lesson = lessonIdSchema;

/** A second marking of a lesson beside the first. */
export interface SecondMarkingView {
  /** As the journal has it last. */
  readonly who: string;
  readonly comparison: MarkingComparison;
  /** What of the second journal could not be read. */
  readonly problems: readonly Problem[];
}

/** The calls about marking the same clips a second time. */
export const SECOND_CALLS = {
  /**
   * Opens a second marking under this name, or goes on with it: a lesson of its own id whose view shows none of the
   * first marker's answers, notes and points. Of the calls about a lesson it takes those that read, watch and mark.
   */
  openSecondMarking: call(
    z.strictObject({ lesson, who: z.string().trim().min(1).max(100) }),
    z.object({ lesson: lessonIdSchema, update: carry<LessonUpdate>() }),
  ),
  /** How far each second marking agrees with the lesson's own. */
  compareMarkings: call(
    z.strictObject({ lesson }),
    z.object({ markings: carry<readonly SecondMarkingView[]>() }),
  ),
} as const;
