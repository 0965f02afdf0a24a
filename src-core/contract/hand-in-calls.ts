import * as z from 'zod';
import type { HandInCheck } from '../gradebook/hand-in-check.ts';
import { planSchema } from '../lesson/plan.ts';
import { sheetOrderSchema } from '../printing/sheet-order.ts';
import { call, job } from './call.ts';
import { carry } from './carried.ts';
import { columnMappingSchema, folderRefSchema, folderTokenSchema, lessonIdSchema } from './desk-view.ts';
import type { HandInPreview, SlipView } from './hand-in-view.ts';
import type { LessonUpdate } from './lesson-update.ts';
import type { Problem } from './problem.ts';

const lesson = lessonIdSchema;
const since = z.number().nullable();
const who = z.string().trim().min(1).max(100);
const update = carry<LessonUpdate>();
const fileName = z.string().trim().min(1).max(200);
/** Null: the plan's own columns. */
const columns = planSchema.shape.gradeSheet.unwrap().shape.columns.nullable();
const id = z.string().min(1).max(256).nullable();

/** What is handed in: a CSV sheet, a workbook, or a OneRoster set as a zip archive. */
const what = z.discriminatedUnion('kind', [
  z.strictObject({ kind: z.literal('csv'), columns }),
  z.strictObject({ kind: z.literal('xlsx'), columns }),
  z.strictObject({
    kind: z.literal('oneroster'),
    version: z.enum(['1.1', '1.2']),
    /** The school's own set, a folder or archive, or one that was uploaded; null: not chosen yet. */
    school: z.union([folderTokenSchema, z.string().regex(/^i-[0-9a-f]{32}$/, 'inbox-token')]).nullable(),
    /** Null: the class with most of the roster's pupils. */
    classId: id,
    /** Null: the set's only category, else one of ours. */
    category: id,
  }),
]);

const order = { lesson, what, evenWithOpenFlags: z.boolean() };

/** What is remembered from one hand-in to the next; null: nothing, or it is not there now. */
const memory = {
  mappings: z.array(columnMappingSchema),
  /** Where the last one went that did not go into its lesson's own folder. */
  lastFolder: folderRefSchema.nullable(),
  /** The school's OneRoster set of the last hand-in that was built on one. */
  schoolSet: folderRefSchema.nullable(),
};

/** The calls with which marks are handed in. */
export const HAND_IN_CALLS = {
  /** Exactly what `writeHandIn` would write. */
  draftHandIn: call(
    z.strictObject(order),
    z.object({
      /** Stands for these very contents; null: refused, see `problems`. */
      draft: z.string().nullable(),
      /** Null where flags refused it. */
      preview: carry<HandInPreview>().nullable(),
      check: carry<HandInCheck>(),
      problems: carry<readonly Problem[]>(),
      fileName,
    }),
  ),
  /** Writes what was previewed as `draft` and keeps a record in the journal. Into null: the lesson's `hand-in`. */
  writeHandIn: call(
    z.strictObject({
      ...order,
      since,
      who,
      draft: z.string().max(64),
      into: folderTokenSchema.nullable(),
      fileName,
      /** Whether a file of that name is replaced. */
      replace: z.boolean(),
    }),
    z.object({ path: z.string(), update }),
  ),
  /**
   * Draws the grade sheet, or the slips of squads or pupils, into one PDF file, in the lesson's `hand-in` folder (`into`
   * null) or in another. A grade sheet is refused while a flag is open, unless `evenWithOpenFlags`, and is recorded in
   * the journal as handed in; slips, which hold no mark, are neither. Stills that were never cut are cut now.
   */
  printSheet: job(
    z.strictObject({
      lesson,
      since,
      who,
      ...sheetOrderSchema.shape,
      evenWithOpenFlags: z.boolean(),
      into: folderTokenSchema.nullable(),
      /** Such as `grade-sheet.pdf`. */
      fileName,
      /** Whether a file of that name is replaced. */
      replace: z.boolean(),
    }),
    z.object({ path: z.string(), pageCount: z.int().min(0), update }),
  ),
  /** The words of the slips that `printSheet` would print, from what is confirmed by now. */
  readSlips: call(
    z.strictObject({ lesson, of: z.enum(['squads', 'pupils']) }),
    z.object({ slips: carry<readonly SlipView[]>() }),
  ),
  /** Columns by destination, and where hand-ins went, as remembered. */
  readHandInMemory: call(z.strictObject({}), z.object(memory)),
  /** Remembers a destination's columns under a name, over what it had; null columns: forgets it. */
  saveMapping: call(z.strictObject({ name: columnMappingSchema.shape.name, columns }), z.object(memory)),
} as const;
