import type { JournalEvent, JournalEventId } from './journal-event.ts';

/** The order in which events count: by instant, then by id. Below 0 where `a` comes first. */
export function compareEvents(a: JournalEvent, b: JournalEvent): number {
  return compareText(a.at, b.at) || compareText(a.id, b.id);
}

/**
 * The events of all journals of one lesson, each id once, in the order of {@link compareEvents}. The same whatever
 * the order or grouping of the journals, and merging again adds nothing. Where one id stands for two different
 * events, which no writer of ours does, the earlier one stays (by instant, then by its text).
 */
export function mergeJournals(...journals: readonly (readonly JournalEvent[])[]): readonly JournalEvent[] {
  const byId = new Map<JournalEventId, JournalEvent>();
  for (const event of journals.flat()) {
    const other = byId.get(event.id);
    if (!other || compareSameId(event, other) < 0) byId.set(event.id, event);
  }
  return [...byId.values()].sort(compareEvents);
}

function compareSameId(a: JournalEvent, b: JournalEvent): number {
  return compareText(a.at, b.at) || compareText(JSON.stringify(a), JSON.stringify(b));
}

/** By code unit, the same on every machine. */
function compareText(a: string, b: string): number {
  if (a === b) return 0;
  return a < b ? -1 : 1;
}
