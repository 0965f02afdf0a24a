import { type Decisions, foldDecisions, type HandedIn } from './decisions.ts';
import type { JournalDecision, JournalEvent, JournalEventId } from './journal-event.ts';
import { mergeJournals } from './merge-journals.ts';

/** Where a journal stands: what is decided, and what undo and redo would take. */
export interface JournalState {
  readonly decisions: Decisions;
  /** The latest decision in force, which undo takes back; null where there is none. */
  readonly undoTarget: JournalEventId | null;
  /** The decision taken back last, as long as nothing new was decided since; null where there is none. */
  readonly redoTarget: JournalEventId | null;
  /** Instant of the latest event, or null for an empty journal. */
  readonly lastAt: string | null;
  /** Events that undo or redo something which is not there to be undone or redone; they count for nothing. */
  readonly idle: readonly JournalEventId[];
}

/**
 * The state that a journal adds up to. The order of the given events and repeated ones change nothing. An undo or
 * redo names its target, so that it holds after a merge too: what the teacher has seen acknowledged stays done,
 * even where another machine's decision has come between.
 */
export function replayJournal(events: readonly JournalEvent[]): JournalState {
  const trail = walkTrail(mergeJournals(events));
  const inForce = [...trail.made.entries()].filter(([id]) => !trail.undone.has(id));
  return {
    decisions: foldDecisions(
      inForce.map(([, decision]) => decision),
      trail.handedIn,
    ),
    undoTarget: inForce.at(-1)?.[0] ?? null,
    redoTarget: trail.redoable.at(-1) ?? null,
    lastAt: trail.lastAt,
    idle: trail.idle,
  };
}

interface Trail {
  /** Every decision ever made, oldest first. */
  readonly made: Map<JournalEventId, JournalDecision>;
  readonly undone: Set<JournalEventId>;
  redoable: JournalEventId[];
  readonly handedIn: HandedIn[];
  readonly idle: JournalEventId[];
  lastAt: string | null;
}

function walkTrail(events: readonly JournalEvent[]): Trail {
  const trail: Trail = {
    made: new Map(),
    undone: new Set(),
    redoable: [],
    handedIn: [],
    idle: [],
    lastAt: events.at(-1)?.at ?? null,
  };
  for (const { id, at, what } of events) {
    if (what.kind === 'handed-in') trail.handedIn.push({ ...what, at });
    else if (what.kind === 'undone') undo(trail, id, what.target);
    else if (what.kind === 'redone') redo(trail, id, what.target);
    else {
      trail.made.set(id, what);
      trail.redoable = [];
    }
  }
  return trail;
}

function undo(trail: Trail, id: JournalEventId, target: JournalEventId): void {
  if (!trail.made.has(target) || trail.undone.has(target)) {
    trail.idle.push(id);
    return;
  }
  trail.undone.add(target);
  trail.redoable.push(target);
}

function redo(trail: Trail, id: JournalEventId, target: JournalEventId): void {
  if (!trail.undone.delete(target)) {
    trail.idle.push(id);
    return;
  }
  trail.redoable = trail.redoable.filter((redoable) => redoable !== target);
}
