import * as z from 'zod';
import type { PlanChange } from '../lesson/compare-plans.ts';
import type { ShelvedExercise } from '../lesson/library/library.ts';
import { type Plan, planSchema } from '../lesson/plan.ts';
import type { ColumnChoice } from '../lesson/roster/class-list.ts';
import type { RosterMerge } from '../lesson/roster/merge-roster.ts';
import type { OneRosterClass } from '../lesson/roster/read-oneroster.ts';
import type { SuggestedSquad } from '../lesson/squads/suggest-squads.ts';
import { call } from './call.ts';
import { carry } from './carried.ts';
import { folderTokenSchema, lessonIdSchema } from './desk-view.ts';
import type { LessonUpdate } from './lesson-update.ts';

const lesson = lessonIdSchema;
const since = z.number().nullable();
const update = carry<LessonUpdate>();
const suggestedPlan = carry<Plan>();
const folderName = z.string().trim().min(1).max(120);
const day = planSchema.shape.lesson.shape.date;
const text = z.string().max(5_000_000);

/** Where a class list comes from: a file or folder that was handed over, or what was uploaded. */
const classListFrom = z.union([folderTokenSchema, z.string().regex(/^i-[0-9a-f]{32}$/, 'inbox-token')]);

const head = z.string().max(200).nullable();

/** How a class list is to be read; null: guess the columns, take the only class. */
const classListOrder = {
  lesson,
  from: classListFrom,
  columns: z.strictObject({ id: head, given: head, family: head }).nullable(),
  classId: z.string().max(256).nullable(),
  left: z.enum(['keep', 'remove']),
};

/** An earlier state of a plan, as `listVersions` names it. */
const version = z.string().regex(/^\d{4}-\d{2}-\d{2}T\d{2}-\d{2}-\d{2}-\d{3}Z$/, 'plan-version');

/** What a class list turned out to be; null where nothing could be read. */
export type RosterSource =
  | { readonly kind: 'csv'; readonly heads: readonly string[]; readonly columns: ColumnChoice }
  | {
      readonly kind: 'oneroster';
      readonly version: '1.1' | '1.2';
      readonly classes: readonly OneRosterClass[];
      /** The class that is taken; null: it must be chosen. */
      readonly classId: string | null;
    };

/** The calls with which a lesson is planned. A plan that goes in is any JSON; what does not read as one is refused. */
export const PLANNING_CALLS = {
  /**
   * So many squads of the lesson's pupils, as `plan.grouping` asks for them. `plan` is the given one with these squads
   * and, where their number changed, with routes for them. Write it with `savePlan`, then the pupils with `saveSquads`.
   */
  suggestSquads: call(
    z.strictObject({ lesson, plan: z.unknown(), count: z.int().min(1).max(40) }),
    z.object({ squads: carry<readonly SuggestedSquad[]>(), plan: suggestedPlan }),
  ),
  /** Writes pupils' squads into roster.csv; pupils that are not named stay where they are. */
  saveSquads: call(
    z.strictObject({
      lesson,
      since,
      assignment: z
        .array(z.strictObject({ pupil: z.string().min(1).max(256), squad: z.string().max(32) }))
        .max(500),
    }),
    z.object({ update }),
  ),
  /** The exercises to choose from: the program's, with the teacher's own merged in by code. */
  readLibrary: call(z.strictObject({}), z.object({ exercises: carry<readonly ShelvedExercise[]>() })),
  /** Takes a teacher's exercises.json over, in the place of the one taken before; empty text: forgets it. */
  importLibrary: call(z.strictObject({ text }), z.object({ exercises: carry<readonly ShelvedExercise[]>() })),
  /** What a class list would change in the roster; nothing is written. */
  previewRoster: call(
    z.strictObject(classListOrder),
    z.object({
      source: carry<RosterSource>().nullable(),
      /** Null: not to be told yet, see the problems. */
      merge: carry<RosterMerge>().nullable(),
      /** Stands for roster.csv and the list as they are now; given back with `mergeRoster`. */
      draft: z.string().nullable(),
    }),
  ),
  /** Merges what was previewed as `draft` into roster.csv, columns of the teacher's own kept. */
  mergeRoster: call(
    z.strictObject({ ...classListOrder, since, draft: z.string().max(64) }),
    z.object({ merge: carry<RosterMerge>(), update }),
  ),
  /** Makes a lesson folder with a plan to begin with and an empty roster, and opens it. */
  newLesson: call(
    z.strictObject({
      into: folderTokenSchema,
      folderName,
      lesson: planSchema.shape.lesson,
      zone: planSchema.shape.zone,
      periods: planSchema.shape.periods,
    }),
    z.object({ update }),
  ),
  /**
   * Copies plan, roster and photos into a new lesson folder, without clips and marks, everybody present, and opens
   * it. Null code: the same one, with the next revision of the cards.
   */
  copyLesson: call(
    z.strictObject({
      lesson,
      into: folderTokenSchema,
      folderName,
      date: day,
      code: planSchema.shape.lesson.shape.code.nullable(),
    }),
    z.object({ update }),
  ),
  /** The plan's earlier states, newest first; each was kept when another was saved over it. */
  listVersions: call(
    z.strictObject({ lesson }),
    z.object({ versions: z.array(z.object({ version, savedMs: z.number() })) }),
  ),
  /** An earlier state; to go back to it, save it with `savePlan`. */
  readVersion: call(z.strictObject({ lesson, version }), z.object({ plan: suggestedPlan })),
  /** What changed from one state of the plan to another; null is the present one. */
  comparePlans: call(
    z.strictObject({ lesson, from: version.nullable(), to: version.nullable() }),
    z.object({ changes: carry<readonly PlanChange[]>() }),
  ),
} as const;
