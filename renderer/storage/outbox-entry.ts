import type { LessonId } from '../../src-core/contract/desk-view.ts';
import type { JournalAct, JournalEventId } from '../../src-core/marking/journal-event.ts';

/** What is to be recorded: an act that names what it is about, or the latest decision taken back or brought back. */
export type OutboxAct = JournalAct | 'undo' | 'redo';

/** Something decided in a window, kept until the host has it on its disk. */
export interface OutboxEntry {
  /** The event's id to be; the host records an id once, however often it is sent. */
  readonly id: JournalEventId;
  readonly lesson: LessonId;
  readonly who: string;
  readonly act: OutboxAct;
  /** Revision of the lesson that has it; null: not acknowledged yet. */
  readonly acked: number | null;
}

/** An entry as it lies in the page's database: `seq` is the order in which all windows decided. */
export interface StoredEntry extends OutboxEntry {
  readonly seq: number;
}
