import type { CheckedInput } from '../../contract/calls.ts';
import type { LessonId } from '../../contract/desk-view.ts';
import type { DeskEvent } from '../../contract/events.ts';
import type { Problem } from '../../contract/problem.ts';
import type { Progress } from '../../contract/progress.ts';
import { fail, type Outcome } from '../../platform/outcome.ts';
import type { DeskRecordFile } from './desk-record.ts';
import type { FolderTokens } from './folder-tokens.ts';
import type { Inboxes } from './inbox.ts';
import { isLessonFolder } from './lesson-folder.ts';
import type { LessonSession } from './lesson-session.ts';
import type { OpenLessons } from './open-lessons.ts';

/** What a face brings to its desk. */
export interface DeskOptions {
  readonly face: 'window' | 'browser';
  readonly version: string;
  /** Where the desk keeps what it remembers; see `desk-record.ts`. */
  readonly home: string;
  /** A dialog of the system; null where the face has none. An empty list: closed without a choice. */
  readonly chooseFolders:
    | ((purpose: CheckedInput<'chooseFolders'>['purpose']) => Promise<readonly string[]>)
    | null;
  /** Films the demo lesson into a folder that is not there, or is one. */
  readonly filmDemo: (
    folder: string,
    job: { readonly signal: AbortSignal; readonly onProgress: (progress: Progress) => void },
  ) => Promise<void>;
  /** Told of faults of the program; `trace` is what the teacher saw. */
  readonly onFault: (trace: string, fault: unknown) => void;
  /** A lesson is asked for by its folder, at the start or by another start of the program: show its window. */
  readonly onAsked?: (lesson: LessonId) => void;
}

/** What the calls work with. */
export interface DeskParts {
  readonly options: DeskOptions;
  readonly record: DeskRecordFile;
  readonly tokens: FolderTokens;
  readonly inboxes: Inboxes;
  readonly lessons: OpenLessons;
  readonly tell: (event: DeskEvent) => void;
  readonly getOpenFirst: () => LessonId | null;
}

type UseSession<Value> = (session: LessonSession) => Promise<Outcome<Value, Problem>>;

/** The session that a call is about, handed to `use`; fails where the lesson is not open here and not known. */
export async function withSession<Value>(
  { lessons }: Pick<DeskParts, 'lessons'>,
  lesson: LessonId,
  use: UseSession<Value>,
): Promise<Outcome<Value, Problem>> {
  const session = await lessons.find(lesson);
  return session ? use(session) : fail({ code: 'lesson-unknown' });
}

/**
 * The same for what reads or writes the lesson's files: fails where its folder is not there now. Nothing is then written,
 * for what stands in its place (an empty mount, a folder made on the way to a file) is not the lesson.
 */
export function withMarking<Value>(
  desk: Pick<DeskParts, 'lessons'>,
  lesson: LessonId,
  use: UseSession<Value>,
): Promise<Outcome<Value, Problem>> {
  return withSession(desk, lesson, async (session) =>
    isLessonFolder(session.folder) ? use(session) : fail({ code: 'lesson-away', path: session.folder }),
  );
}

/** The same for what a second marking may not do: change, hand in or delete anything of the lesson. */
export function withLesson<Value>(
  desk: Pick<DeskParts, 'lessons'>,
  lesson: LessonId,
  use: UseSession<Value>,
): Promise<Outcome<Value, Problem>> {
  return withMarking(desk, lesson, async (session) =>
    session.secondOf !== null ? fail({ code: 'second-marking-only' }) : use(session),
  );
}
