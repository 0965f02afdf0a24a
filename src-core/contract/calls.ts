import * as z from 'zod';
import type { LessonProblem } from '../lesson/lesson-problem.ts';
import { journalEventSchema } from '../marking/journal-event.ts';
import { packOrderSchema } from '../printing/pack.ts';
import type { PrintProblem } from '../printing/print-problem.ts';
import { ARCHIVE_CALLS } from './archive-calls.ts';
import { call, job } from './call.ts';
import { carry } from './carried.ts';
import {
  deskViewSchema,
  folderRefSchema,
  folderTokenSchema,
  lessonIdSchema,
  recentLessonSchema,
} from './desk-view.ts';
import type { EvidenceView } from './evidence-view.ts';
import { HAND_IN_CALLS } from './hand-in-calls.ts';
import { KEEPING_CALLS } from './keeping-calls.ts';
import type { LessonUpdate } from './lesson-update.ts';
import { LOOK_BACK_CALLS } from './look-back-calls.ts';
import { PLANNING_CALLS } from './planning-calls.ts';
import type { Problem } from './problem.ts';
import { SECOND_CALLS } from './second-calls.ts';

/** The revision that the page has: the reply then says only what changed since. Null: send the whole. */
const since = z.number().nullable();
const lesson = lessonIdSchema;
const who = z.string().trim().min(1).max(100);
const eventId = journalEventSchema.shape.id;
const clip = z.string().regex(/^[0-9a-f]{16}(-\d{1,4})?$/, 'clip-id');
const update = carry<LessonUpdate>();
const problems = carry<readonly Problem[]>();
const inbox = z.string().regex(/^i-[0-9a-f]{32}$/, 'inbox-token');
const count = z.int().min(0);

/** A decision, or one taken back or brought into force again; what is handed in is recorded by the host itself. */
const act = journalEventSchema.shape.what.refine(({ kind }) => kind !== 'handed-in', 'not-by-a-face');

/** A file that the page is about to upload: its path as dropped, such as `Teal/IMG_0012.MOV`. */
const announcedFile = z.strictObject({
  path: z.string().min(1).max(1000),
  sizeBytes: count,
  modifiedMs: z.number().nullable(),
});

const nothing = z.strictObject({});

/**
 * The one list of what a face may ask: for each name what goes in and what comes out. Input is refused where it is
 * anything else; a reply is an `Outcome` of `out`. Calls with `isJob` may take long: they report progress, and a
 * cancel ends them at their next safe point. A face that asks again while such a job runs joins it.
 */
export const CALLS = {
  ...PLANNING_CALLS,
  ...HAND_IN_CALLS,
  ...KEEPING_CALLS,
  ...SECOND_CALLS,
  ...LOOK_BACK_CALLS,
  ...ARCHIVE_CALLS,
  /** What the desk can do, and the lessons opened before. */
  readDesk: call(nothing, deskViewSchema),
  /** A dialog of the system. An empty list: the teacher closed it. */
  chooseFolders: call(
    z.strictObject({
      purpose: z.enum(['lesson', 'clips', 'hand-in', 'place', 'class-list', 'school-set', 'tablet']),
    }),
    z.object({ folders: z.array(folderRefSchema) }),
  ),
  /** The folders in a folder; null: the places to begin at (home, drives, recent ones). Hidden ones are left out. */
  listFolders: call(
    z.strictObject({ folder: folderTokenSchema.nullable() }),
    z.object({
      here: folderRefSchema.nullable(),
      parent: folderRefSchema.nullable(),
      folders: z.array(folderRefSchema),
    }),
  ),
  /** Opens a lesson folder, by choice or as known from before; clips are not read yet (`readClips`). */
  openLesson: call(
    z.union([z.strictObject({ folder: folderTokenSchema }), z.strictObject({ lesson })]),
    z.object({ update }),
  ),
  /** The demo lesson, filmed where it is not there yet; `anew`: whatever was decided in it is thrown away. */
  openDemo: job(z.strictObject({}), z.object({ update })),
  /** Takes a lesson off the list of recent ones; its folder is left alone. */
  forgetLesson: call(z.strictObject({ lesson }), z.object({ lessons: z.array(recentLessonSchema) })),
  /** An open lesson's present state. */
  readLesson: call(z.strictObject({ lesson, since }), z.object({ update })),
  /** Reads the folder of clips and searches their pictures; what is known is in the lesson as soon as it is known. */
  readClips: job(z.strictObject({ lesson, since }), z.object({ update })),
  /**
   * Watches whole every clip of the routes that was not watched yet, as many at once as there are cores, the one on
   * the desk first (`readEvidence`). What is seen is in the lesson as it comes. Refused before clips were read.
   */
  watchClips: job(z.strictObject({ lesson, since }), z.object({ update })),
  /**
   * What is drawn beside one clip's film, as far as its pictures were watched; decodes nothing. `isOpened`: the teacher
   * has it on the desk now, so that it is watched next; otherwise it is only made ready.
   */
  readEvidence: call(
    z.strictObject({ lesson, clip, isOpened: z.boolean() }),
    z.object({ evidence: carry<EvidenceView>() }),
  ),
  /** Reads the clips where they lie, from now on; null: from `clips` in the lesson folder again. */
  setClipsFolder: call(
    z.strictObject({ lesson, since, folder: folderTokenSchema.nullable() }),
    z.object({ update }),
  ),
  /** Announces dropped files; each is then sent by PUT to `url` of the same place in `uploads`. */
  openInbox: call(
    z.strictObject({ lesson, files: z.array(announcedFile).min(1).max(5000) }),
    z.object({ inbox, uploads: z.array(z.strictObject({ path: z.string(), url: z.string() })) }),
  ),
  /** Throws away what was uploaded and not brought in. */
  closeInbox: call(z.strictObject({ inbox }), nothing),
  /** Copies clips into the lesson, compared, each content once. Read them afterwards (`readClips`). */
  bringClips: job(
    z.strictObject({
      lesson,
      from: z
        .array(z.union([folderTokenSchema, inbox]))
        .min(1)
        .max(100),
    }),
    z.object({
      /** Paths below the folder of clips. */
      copied: z.array(z.string()),
      alreadyThere: count,
      problems,
    }),
  ),
  /**
   * Records decisions. What is acknowledged is on the disk. Each has its id from the face, so that sending it again
   * after a lost reply records nothing twice. All or none.
   */
  decide: call(
    z.strictObject({
      lesson,
      since,
      who,
      entries: z
        .array(z.strictObject({ id: eventId, act }))
        .min(1)
        .max(500),
    }),
    z.object({ acknowledged: z.array(eventId), update }),
  ),
  /** Takes the latest decision back; `id` is the new event's. */
  undo: call(z.strictObject({ lesson, since, who, id: eventId }), z.object({ update })),
  /** Brings the decision taken back last into force again. */
  redo: call(z.strictObject({ lesson, since, who, id: eventId }), z.object({ update })),
  /** What is wrong with a plan as edited, its photos looked for in `lesson`; any JSON is taken. Empty: nothing is. */
  checkPlan: call(
    z.strictObject({ lesson: lesson.optional(), plan: z.unknown() }),
    z.object({ problems: carry<readonly (LessonProblem | PrintProblem)[]>() }),
  ),
  /** Writes plan.json whole, unless it is no longer the plan of `base` (`LessonView.planVersion`) or is refused. */
  savePlan: call(
    z.strictObject({ lesson, since, base: z.string().max(64), plan: z.unknown() }),
    z.object({ update }),
  ),
  /** Makes a film that any window plays, where there is none yet; then `client.media.proxy` has it. */
  prepareProxy: job(z.strictObject({ lesson, clip }), z.object({ isReady: z.literal(true) })),
  /**
   * Draws the print pack into PDF files: one a part, in the lesson's `print` folder (`into` null) or in another. Fails
   * with `file-exists` before anything is written, unless `replace`.
   */
  printPack: job(
    z.strictObject({
      lesson,
      ...packOrderSchema.shape,
      into: folderTokenSchema.nullable(),
      replace: z.boolean(),
    }),
    z.object({ paths: z.array(z.string()), pageCount: count }),
  ),
} as const;

/** Every name that can be asked. */
export type CallName = keyof typeof CALLS;

/** What a face sends with a call. */
export type CallInput<Name extends CallName> = z.input<(typeof CALLS)[Name]['in']>;

/** The same once it was checked: what a handler is given. */
export type CheckedInput<Name extends CallName> = z.output<(typeof CALLS)[Name]['in']>;

/** What a call gives where it succeeds. */
export type CallOutput<Name extends CallName> = z.output<(typeof CALLS)[Name]['out']>;
