import type { FoundFile } from '../intake/found-file.ts';
import type { DeletionEntry } from '../lesson-file/deletion-log.ts';
import type { LessonId } from './desk-view.ts';

/** Until when a lesson is kept. */
export interface KeptUntil {
  /** The last day, `2025-07-31`; null: none is set, or it cannot be read. */
  readonly until: string | null;
  readonly isOverdue: boolean;
}

/** Another lesson that this desk knows, with its last day. */
export interface KeptLesson extends KeptUntil {
  readonly lesson: LessonId;
  readonly title: string;
  readonly className: string;
  /** The lesson's day. */
  readonly date: string;
}

/** How long a lesson is kept, and what was deleted of it. */
export interface KeepingView extends KeptUntil {
  /** keeping.json is there and says no day: no date holds until one is set again. */
  readonly isUnreadable: boolean;
  /** In the school's zone, `2025-05-15`. */
  readonly today: string;
  /** Oldest first. */
  readonly deletions: readonly DeletionEntry[];
  /** Latest opened first; this one is not among them. */
  readonly others: readonly KeptLesson[];
  /** Where the clips are read in place, so that no deletion of the lesson reaches them; null: they lie in the lesson. */
  readonly clipsElsewhere: string | null;
}

/** A tablet's files by whether the lesson has them, compared by whole content. */
export interface TabletView {
  /** Verified here, may be deleted there. */
  readonly safe: readonly FoundFile[];
  /** Not here, or not to be read: must stay there. */
  readonly missing: readonly FoundFile[];
}
