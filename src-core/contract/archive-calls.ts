import * as z from 'zod';
import { call, job } from './call.ts';
import { carry } from './carried.ts';
import { folderTokenSchema, lessonIdSchema } from './desk-view.ts';
import type { LessonUpdate } from './lesson-update.ts';
import type { Problem } from './problem.ts';

const count = z.int().min(0);

/** An archive's own name in its folder, such as `harbour.zip`: never a path. */
const archiveName = z
  .string()
  .max(200)
  .regex(/^[^/\\]+\.zip$/i, 'archive-name');

/** An archive of a lesson, by what its list says of it. */
const foundArchiveSchema = z.object({
  name: archiveName,
  title: z.string(),
  className: z.string(),
  /** The lesson's day, `2026-05-12`. */
  date: z.string(),
  holdsClips: z.boolean(),
  bytes: count,
});

/** See {@link foundArchiveSchema}; what a page lists of the archives in a folder. */
export type FoundArchive = z.infer<typeof foundArchiveSchema>;

/** A file that may be an archive of a lesson, but cannot be restored from: cut short, damaged, newer or unsafe. */
export interface BadArchive {
  readonly name: string;
  readonly problem: Problem;
}

/** The calls with which a lesson is kept in an archive and brought back from one. */
export const ARCHIVE_CALLS = {
  /**
   * Keeps a lesson in one archive in a folder, read back and compared; nothing is written over. What was left out of it
   * stands among the problems.
   */
  keepLesson: job(
    z.strictObject({ lesson: lessonIdSchema, into: folderTokenSchema, withClips: z.boolean() }),
    z.object({ path: z.string(), files: count, bytes: count, holdsClips: z.boolean() }),
  ),
  /** The archives of lessons that lie in a folder, by name; none below it. Other zip files are passed over. */
  listArchives: call(
    z.strictObject({ folder: folderTokenSchema }),
    z.object({ archives: z.array(foundArchiveSchema), bad: carry<readonly BadArchive[]>() }),
  ),
  /**
   * Makes a lesson folder beside an archive once every file was checked, and opens it. It is named like the archive, with
   * a number where that is taken. `onlyWhole`: a damaged archive gives the files that are whole, and the rest are named.
   */
  restoreLesson: job(
    z.strictObject({ folder: folderTokenSchema, name: archiveName, onlyWhole: z.boolean() }),
    z.object({ update: carry<LessonUpdate>() }),
  ),
} as const;
