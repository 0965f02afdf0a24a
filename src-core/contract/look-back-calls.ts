import * as z from 'zod';
import type { LessonSummary } from '../marking/look-back/lesson-summary.ts';
import { call, job } from './call.ts';
import { carry } from './carried.ts';
import { folderTokenSchema } from './desk-view.ts';
import type { LookBackProblem } from './problem.ts';

/** A folder that lessons lie in; null: the folders that lessons opened before lie in. */
const folder = folderTokenSchema.nullable();
const count = z.int().min(0);

const gathered = z.object({
  /** What is kept of the lessons' figures, those of lessons that were not held yet included. */
  summaries: carry<readonly LessonSummary[]>(),
  /** Where was looked, for showing. */
  paths: z.array(z.string()),
  /** Lessons whose figures are not up to date: `refreshLookBack` grades them. */
  stale: count,
  /** Which of the summaries, from 0, are of lessons without films any more: their figures stand as they were. */
  filmsGone: z.array(count),
  problems: carry<readonly LookBackProblem[]>(),
});

/** The calls with which many lessons are looked back on; what is shown of them the page computes itself. */
export const LOOK_BACK_CALLS = {
  /** What is kept with each lesson of a folder; grades nothing. */
  readLookBack: call(z.strictObject({ folder }), gathered),
  /** Grades the lessons whose figures are not up to date, and keeps them; stopped, it goes on where it was. */
  refreshLookBack: job(z.strictObject({ folder }), gathered),
  /**
   * Writes a section's figures as CSV into the folder that was looked into, or beside the section's latest lesson; a row
   * a squad and lesson.
   */
  writeFigures: call(
    z.strictObject({
      folder,
      school: z.string().max(200),
      className: z.string().max(200),
      /** Whether a file of that name is replaced. */
      replace: z.boolean(),
    }),
    z.object({ path: z.string() }),
  ),
} as const;
