import type { FolderRef, LessonId } from './desk-view.ts';
import type { Progress } from './progress.ts';

/** A request's own id, chosen by the face that asks; progress and cancel name it. */
export type JobId = string;

/** What a menu of the shell can ask the page to do. */
export type MenuCommand = 'open-lesson' | 'bring-in' | 'undo' | 'redo' | 'next-flag' | 'keys' | 'hand-in';

/** What the host tells a face unasked. */
export type DeskEvent =
  /** Progress of a request of this very face. */
  | {
      readonly kind: 'progress';
      readonly job: JobId;
      readonly progress: Progress;
      /** Null: not to be told yet. */
      readonly secondsLeft: number | null;
    }
  /** The lesson is at another revision now, whoever changed it: another window, the command line, a job. */
  | { readonly kind: 'lesson-changed'; readonly lesson: LessonId; readonly revision: number }
  /** Folders that the teacher dropped on a window of the shell; the window that they fell on hears it. */
  | { readonly kind: 'folders-dropped'; readonly folders: readonly FolderRef[] }
  /** A lesson folder that was opened from the system: a second start, a double click. */
  | { readonly kind: 'lesson-asked'; readonly lesson: LessonId }
  | { readonly kind: 'menu'; readonly command: MenuCommand }
  /** The host was away and is back, or comes anew: whatever was missed has to be read again. */
  | { readonly kind: 'reconnected' };
