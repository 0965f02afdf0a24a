import { liveQuery } from 'dexie';
import type { LessonId } from '../../src-core/contract/desk-view.ts';
import type { JournalEventId } from '../../src-core/marking/journal-event.ts';
import type { OutboxEntry, StoredEntry } from './outbox-entry.ts';
import type { PageDatabase } from './page-database.ts';

/** The entries of one lesson that all windows of this machine have made, in the order they were made. */
export interface Outbox {
  /** All that is known at once: stored ones first, then those of this window that are on their way to the disk. */
  readonly list: () => readonly OutboxEntry[];
  /** Shown at once; resolves when they are on the disk. */
  readonly add: (entries: readonly OutboxEntry[]) => Promise<void>;
  /** What the host has not acknowledged, read from the disk. */
  readonly readUnsent: () => Promise<readonly OutboxEntry[]>;
  /** Marks entries as recorded in a revision; they are kept until every window may have seen it. */
  readonly acknowledge: (ids: readonly JournalEventId[], revision: number) => Promise<void>;
  /** Takes entries out for good. */
  readonly remove: (ids: readonly JournalEventId[]) => Promise<void>;
  /** Takes out what was acknowledged up to a revision. */
  readonly tidy: (revision: number) => Promise<void>;
  readonly stop: () => void;
}

/** The outbox of one lesson. `onChange` hears whatever window changes it. */
export function openOutbox(database: PageDatabase, lesson: LessonId, onChange: () => void): Outbox {
  let stored: readonly OutboxEntry[] = [];
  let fresh: readonly OutboxEntry[] = [];
  const rows = openRows(database, lesson);
  const change = (edit: (entries: readonly OutboxEntry[]) => readonly OutboxEntry[]) => {
    [stored, fresh] = [edit(stored), edit(fresh)];
    onChange();
  };
  const stopFollowing = rows.follow((found) => {
    const known = new Set(found.map(({ id }) => id));
    stored = found;
    fresh = fresh.filter(({ id }) => !known.has(id));
    onChange();
  });
  return {
    list: () => [...stored, ...fresh],
    add: async (entries) => {
      fresh = [...fresh, ...entries];
      onChange();
      await rows.add(entries);
    },
    readUnsent: async () => {
      const found = await rows.read();
      const known = new Set([...found, ...stored].map(({ id }) => id));
      // Without storage (a private window) entries stay with this window and are sent from here.
      return [...found, ...fresh.filter(({ id }) => !known.has(id))].filter(({ acked }) => acked === null);
    },
    acknowledge: async (ids, revision) => {
      change((entries) =>
        entries.map((entry) => (ids.includes(entry.id) ? { ...entry, acked: revision } : entry)),
      );
      await rows.acknowledge(ids, revision);
    },
    remove: async (ids) => {
      change((entries) => entries.filter(({ id }) => !ids.includes(id)));
      await rows.remove(ids);
    },
    tidy: rows.tidy,
    stop: stopFollowing,
  };
}

/** The stored part. A page whose storage fails works on without it, so nothing here rejects. */
function openRows(database: PageDatabase, lesson: LessonId) {
  const { outbox } = database;
  const readAll = () => outbox.where('lesson').equals(lesson).sortBy('seq');
  const read = (): Promise<readonly StoredEntry[]> => readAll().catch(() => []);
  const change = (ids: readonly JournalEventId[], work: (seqs: number[]) => Promise<unknown>) =>
    database
      .transaction('rw', outbox, async () => {
        const found = await readAll();
        await work(found.filter(({ id }) => ids.includes(id)).map(({ seq }) => seq));
      })
      .catch(() => {});
  return {
    read,
    add: async (entries: readonly OutboxEntry[]): Promise<void> => {
      await outbox.bulkAdd([...entries]).catch(() => {});
    },
    acknowledge: (ids: readonly JournalEventId[], acked: number) =>
      change(ids, (seqs) => outbox.bulkUpdate(seqs.map((key) => ({ key, changes: { acked } })))),
    remove: (ids: readonly JournalEventId[]) => change(ids, (seqs) => outbox.bulkDelete(seqs)),
    tidy: async (revision: number): Promise<void> => {
      const done = (await read()).filter(({ acked }) => acked !== null && acked <= revision);
      await outbox.bulkDelete(done.map(({ seq }) => seq)).catch(() => {});
    },
    follow: (listener: (rows: readonly StoredEntry[]) => void) => {
      const query = liveQuery(readAll).subscribe({ next: listener, error: () => {} });
      return () => query.unsubscribe();
    },
  };
}
