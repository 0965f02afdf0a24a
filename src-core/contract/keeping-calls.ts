import * as z from 'zod';
import type { Holdings } from '../lesson-file/deletion-log.ts';
import { call, job } from './call.ts';
import { carry } from './carried.ts';
import { folderTokenSchema, lessonIdSchema } from './desk-view.ts';
import type { KeepingView, TabletView } from './keeping-view.ts';
import type { LessonUpdate } from './lesson-update.ts';

const lesson = lessonIdSchema;
const since = z.number().nullable();
const who = z.string().trim().min(1).max(100);
const pupil = z.string().min(1).max(256);
const scope = z.enum(['films', 'all']);
const keeping = z.object({ keeping: carry<KeepingView>() });

/** The calls that look after what is kept of a lesson once it is marked. */
export const KEEPING_CALLS = {
  /** How long the lesson is kept, what was deleted of it, and which other lessons are due. */
  readKeeping: call(z.strictObject({ lesson }), keeping),
  /** Sets the last day on which the lesson is kept; null: none. Nothing is deleted by itself. */
  keepUntil: call(z.strictObject({ lesson, until: z.iso.date().nullable() }), keeping),
  /** What a deletion would take, file by file. Refused while clips are read or watched, for they leave files. */
  readHoldings: call(z.strictObject({ lesson, scope }), z.object({ holdings: carry<Holdings>() })),
  /**
   * Deletes exactly what was listed under `code`; the log says that it was, and nothing of what was in it. Where all
   * goes (`isGone`), the lesson is closed and taken off the list of lessons; otherwise faces are told that it changed.
   */
  deleteHoldings: call(
    z.strictObject({ lesson, who, scope, code: z.string().regex(/^[0-9a-f]{8}$/, 'holdings-code') }),
    z.object({ files: z.int().min(0), bytes: z.number().min(0), isGone: z.boolean() }),
  ),
  /** Compares a tablet's folder with the lesson's clips by whole content; nothing is changed on either. */
  compareTablet: job(
    z.strictObject({ lesson, folder: folderTokenSchema }),
    z.object({ tablet: carry<TabletView>() }),
  ),
  /** Notes consent or the do-not-film word of one pupil in roster.csv; what is left out stays as it is. */
  noteConsent: call(
    z.strictObject({
      lesson,
      since,
      pupil,
      /** Null: nothing is noted any more. */
      consent: z.enum(['given', 'withheld']).nullable().optional(),
      stills: z.boolean().optional(),
    }),
    z.object({ update: carry<LessonUpdate>() }),
  ),
  /** Everything that is held on one pupil, without others' names, as Markdown. */
  readPupilRecord: call(
    z.strictObject({ lesson, pupil }),
    z.object({
      /** Stands for this very text. */
      draft: z.string(),
      text: z.string(),
      /** Where it is kept: what has to be looked at to delete it. */
      keptIn: z.array(z.string()),
      fileName: z.string(),
    }),
  ),
  /** Writes what was read as `draft`; into null: the lesson's `records` folder. */
  writePupilRecord: call(
    z.strictObject({
      lesson,
      pupil,
      draft: z.string().max(64),
      into: folderTokenSchema.nullable(),
      fileName: z.string().trim().min(1).max(200),
      replace: z.boolean(),
    }),
    z.object({ path: z.string() }),
  ),
} as const;
