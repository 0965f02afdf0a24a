import type { JournalView } from '../../src-core/contract/lesson-view.ts';
import type { JournalAct, JournalDecision, JournalEventId } from '../../src-core/marking/journal-event.ts';
import type { OutboxEntry } from './outbox-entry.ts';

/** A decision that waits to be acknowledged, and is in force as far as this page knows. */
export interface PendingDecision {
  readonly id: JournalEventId;
  readonly decision: JournalDecision;
}

/** What a run of waiting entries adds up to. */
export interface PendingTrail {
  /** In force, oldest first. */
  readonly decisions: readonly PendingDecision[];
  /** Taken back and ready to be brought back, oldest first. */
  readonly undone: readonly PendingDecision[];
  /**
   * How far the entries reach back behind themselves: decisions that were acknowledged before are being taken back or
   * brought back, and only the host knows what stood there.
   */
  readonly reachesBack: boolean;
}

/** Follows waiting entries in the order they were made, the way a journal's replay does. */
export function foldPending(entries: readonly OutboxEntry[]): PendingTrail {
  const trail: Trail = { decisions: [], undone: [], reachesBack: false };
  for (const { id, act } of entries) step(trail, id, act);
  return trail;
}

/** The act that takes the latest decision back; null where there is none. `undo` leaves the choice to the host. */
export function findUndoAct(
  journal: JournalView,
  entries: readonly OutboxEntry[],
): JournalAct | 'undo' | null {
  const { decisions, reachesBack } = foldPending(entries);
  const target = decisions.at(-1)?.id;
  if (target !== undefined) return { kind: 'undone', target };
  if (reachesBack) return 'undo';
  return journal.undoTarget === null ? null : { kind: 'undone', target: journal.undoTarget };
}

/** The act that brings back what was taken back last; null where there is nothing. `redo`: the host's choice. */
export function findRedoAct(
  journal: JournalView,
  entries: readonly OutboxEntry[],
): JournalAct | 'redo' | null {
  const { decisions, undone, reachesBack } = foldPending(entries);
  const target = undone.at(-1)?.id;
  if (target !== undefined) return { kind: 'redone', target };
  if (reachesBack) return 'redo';
  // A new decision ends what could be brought back.
  if (decisions.length > 0 || journal.redoTarget === null) return null;
  return { kind: 'redone', target: journal.redoTarget };
}

interface Trail {
  decisions: PendingDecision[];
  undone: PendingDecision[];
  reachesBack: boolean;
}

function step(trail: Trail, id: JournalEventId, act: OutboxEntry['act']): void {
  if (act === 'undo') swing(trail, 'decisions', trail.decisions.at(-1)?.id);
  else if (act === 'redo') swing(trail, 'undone', trail.undone.at(-1)?.id);
  else if (act.kind === 'undone') swing(trail, 'decisions', act.target);
  else if (act.kind === 'redone') swing(trail, 'undone', act.target);
  else if (act.kind !== 'handed-in') {
    trail.decisions.push({ id, decision: act });
    trail.undone = [];
  }
}

/** Moves a decision from one side to the other: in force, or taken back. */
function swing(trail: Trail, from: 'decisions' | 'undone', target: JournalEventId | undefined): void {
  const moved = trail[from].find(({ id }) => id === target);
  if (!moved) {
    trail.reachesBack = true;
    return;
  }
  trail[from] = trail[from].filter(({ id }) => id !== target);
  const to = from === 'decisions' ? 'undone' : 'decisions';
  // Ids rise with time, so what is brought back stands where it stood.
  trail[to] = to === 'undone' ? [...trail.undone, moved] : [...trail.decisions, moved].sort(byId);
}

function byId(one: PendingDecision, other: PendingDecision): number {
  return one.id < other.id ? -1 : 1;
}
