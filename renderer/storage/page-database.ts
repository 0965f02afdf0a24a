import { Dexie, type EntityTable, type Table } from 'dexie';
import type { LessonId } from '../../src-core/contract/desk-view.ts';
import type { LessonView } from '../../src-core/contract/lesson-view.ts';
import type { StoredEntry } from './outbox-entry.ts';

/** The page's copy of a lesson as the host last told it; a cache, for the journal wins. */
export interface KeptLesson {
  readonly lesson: LessonId;
  readonly view: LessonView;
}

/** Something typed and not yet decided, or where a step was left; gone when it is decided. */
export interface Draft {
  readonly key: string;
  readonly text: string;
}

/** The page's own storage, one for all windows of one origin. */
export interface PageDatabase extends Dexie {
  readonly lessons: Table<KeptLesson, LessonId>;
  readonly outbox: EntityTable<StoredEntry, 'seq'>;
  readonly drafts: Table<Draft, string>;
}

/** The newest shape of the page's storage; older ones are upgraded by Dexie on opening. */
const VERSION = 1;

/**
 * Opens the page's storage, on first use. Transactions are strict: what is committed is on the disk, so that a
 * decision survives a crash before the host has heard of it.
 */
export function openPageDatabase(name = 'routemark'): PageDatabase {
  // Its own cache would copy a whole lesson with every write; what is read again here is small.
  const database = new Dexie(name, { chromeTransactionDurability: 'strict', cache: 'disabled' });
  database.version(VERSION).stores({ lessons: 'lesson', outbox: '++seq, lesson', drafts: 'key' });
  return database as PageDatabase;
}
