import type { EpochMs } from '../platform/units.ts';
import { type Decisions, getOverrideKey } from './decisions.ts';
import type {
  JournalAct,
  JournalDecision,
  JournalEvent,
  JournalEventId,
  OverrideTarget,
} from './journal-event.ts';
import type { JournalState } from './replay.ts';

/** What the outside brings to an event: a fresh ULID, the present instant and who decides. */
export interface EventStamp {
  readonly id: JournalEventId;
  readonly nowMs: EpochMs;
  readonly who: string;
}

/**
 * The event that records an act, with what was decided before on the same matter. Its instant is the present one,
 * or a millisecond after the journal's last event where the clock stands still or was put back: the order of a
 * journal is the order of its instants.
 */
export function buildEvent(state: JournalState, what: JournalAct, stamp: EventStamp): JournalEvent {
  const lastMs = state.lastAt === null ? Number.NEGATIVE_INFINITY : Date.parse(state.lastAt);
  const at = new Date(Math.max(Math.floor(stamp.nowMs), lastMs + 1)).toISOString();
  const isDecision = what.kind !== 'undone' && what.kind !== 'redone' && what.kind !== 'handed-in';
  return {
    id: stamp.id,
    at,
    who: stamp.who,
    what,
    was: isDecision ? findPrevious(state.decisions, what) : null,
  };
}

/** The event that takes the latest decision back, or null where nothing is left to undo. */
export function findUndo(state: JournalState, stamp: EventStamp): JournalEvent | null {
  const { undoTarget: target } = state;
  return target === null ? null : buildEvent(state, { kind: 'undone', target }, stamp);
}

/** The event that brings the decision taken back last into force again, or null where there is none. */
export function findRedo(state: JournalState, stamp: EventStamp): JournalEvent | null {
  const { redoTarget: target } = state;
  return target === null ? null : buildEvent(state, { kind: 'redone', target }, stamp);
}

/** What is in force on the matter that a decision is about, as a decision; null where nothing is. */
function findPrevious(decisions: Decisions, what: JournalDecision): JournalDecision | null {
  switch (what.kind) {
    case 'station-set':
      return restate(decisions.stationOf.get(what.clip), (station) => ({ ...what, station }));
    case 'clip-moved':
      return restate(decisions.squadOf.get(what.clip), (squad) => ({ ...what, squad }));
    case 'clip-placed':
      return restate(decisions.slotOf.get(what.clip), (slot) => ({ ...what, slot }));
    case 'clock-set':
      return restate(decisions.clockCorrectionSeconds.get(what.squad), (correctionSeconds) => ({
        ...what,
        correctionSeconds,
      }));
    case 'criterion-marked':
      return restate(decisions.answers.get(what.clip)?.get(what.criterion), (met) => ({ ...what, met }));
    case 'clip-confirmed': {
      const before = decisions.answers.get(what.clip);
      return before && before.size > 0 ? { ...what, answers: Object.fromEntries(before) } : null;
    }
    case 'clip-noted':
      return restate(decisions.notes.get(what.clip), (text) => ({ ...what, text }));
    case 'lanes-set':
      return restate(decisions.lanesOf.get(what.clip), (lanes) => ({
        ...what,
        lanes: typeof lanes === 'number' ? lanes : [...lanes],
      }));
    case 'flag-settled':
      return restate(decisions.flags.get(what.flag), (answer) => ({ ...what, ...answer }));
    case 'squad-marked':
      return restate(decisions.squadPoints.get(what.squad)?.get(what.criterion), (points) => ({
        ...what,
        points,
      }));
    case 'attendance-set':
      return restate(decisions.attendance.get(what.pupil), (word) => ({ ...what, ...word }));
    case 'points-overridden':
      return findPreviousOverride(decisions, what.of);
  }
}

function findPreviousOverride(decisions: Decisions, of: OverrideTarget): JournalDecision | null {
  return restate(decisions.overrides.get(getOverrideKey(of)), (override) => ({
    kind: 'points-overridden',
    of,
    ...override,
  }));
}

function restate<Value>(
  value: Value | undefined,
  build: (value: Value) => JournalDecision,
): JournalDecision | null {
  return value === undefined ? null : build(value);
}
