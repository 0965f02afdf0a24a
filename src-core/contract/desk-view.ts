import * as z from 'zod';

/** A lesson folder's identity on this machine: 16 hex digits, the same each time the folder is opened. */
export type LessonId = string;

/** A folder that the host has handed out after the teacher's own choice; good until the host ends. */
export type FolderToken = string;

/** Shape of a {@link LessonId}. */
export const lessonIdSchema = z.string().regex(/^[0-9a-f]{16}$/, 'lesson-id');

/** Shape of a {@link FolderToken}. */
export const folderTokenSchema = z.string().regex(/^f-[0-9a-f]{32}$/, 'folder-token');

/** A folder as the teacher sees it, and the token to ask with. `path` is for showing alone: no call takes one. */
export const folderRefSchema = z.object({
  token: folderTokenSchema,
  name: z.string(),
  path: z.string(),
  /** It holds a plan.json. */
  isLesson: z.boolean(),
});

/** A folder to choose, with its token. */
export type FolderRef = z.infer<typeof folderRefSchema>;

/** A lesson opened before, newest first in lists. */
export const recentLessonSchema = z.object({
  lesson: lessonIdSchema,
  title: z.string(),
  className: z.string(),
  /** The lesson's day, `2026-05-12`. */
  date: z.string(),
  path: z.string(),
  openedMs: z.number(),
  isDemo: z.boolean(),
  /** False: the folder is not there now (a stick that is not plugged in). */
  isThere: z.boolean(),
  /** The last day that it was to be kept, where that day is over; null: it is not, or none is set. */
  dueSince: z.string().nullable(),
});

/** One entry of the list of lessons. */
export type RecentLesson = z.infer<typeof recentLessonSchema>;

/** A destination's columns under a name of the teacher's, remembered on this machine. */
export const columnMappingSchema = z.strictObject({
  name: z.string().trim().min(1).max(80),
  columns: z
    .array(z.strictObject({ head: z.string().trim().min(1).max(200), field: z.string().max(40) }))
    .min(1)
    .max(60),
});

/** What the page must know of the desk that it stands on. */
export const deskViewSchema = z.object({
  /** `window`: the desktop shell. `browser`: loopback. */
  face: z.enum(['window', 'browser']),
  /** Version of the program. */
  version: z.string(),
  /** `chooseFolders` opens a dialog of the system; otherwise `listFolders` walks. */
  hasFolderDialog: z.boolean(),
  /** Dropped files are to be uploaded by the page (`openInbox`); otherwise they come as `folders-dropped`. */
  takesUploads: z.boolean(),
  /** False: no ffmpeg was found, so cards, stills and proxies are missing. */
  hasFfmpeg: z.boolean(),
  lessons: z.array(recentLessonSchema),
  /** A lesson or folder named when the program was started; to be opened first. */
  openFirst: lessonIdSchema.nullable(),
});

/** The desk as the page sees it. */
export type DeskView = z.infer<typeof deskViewSchema>;
