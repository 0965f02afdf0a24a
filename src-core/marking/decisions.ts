import type { GivenLanes } from '../evidence/unison-finding.ts';
import type { SlotIndex, SquadCode, StationCode } from '../lesson/plan.ts';
import type { Attendance } from '../lesson/roster.ts';
import type { FlagKey } from '../matching/flag.ts';
import type { ClipId } from '../matching/observation.ts';
import type { Seconds } from '../platform/units.ts';
import type { JournalDecision, JournalEvent, OverrideTarget, PointsChange } from './journal-event.ts';

/** A change of points by hand. */
export interface Override {
  readonly change: PointsChange;
  readonly reason: string;
}

/** How the teacher answered a flag: `kept` (it is as flagged) or `cleared` (it is not). */
export interface FlagAnswer {
  readonly settled: 'kept' | 'cleared';
  readonly reason: string | null;
}

/** A pupil's attendance as the teacher set it over the roster. */
export interface AttendanceWord {
  readonly attendance: Attendance;
  /** Local time of arrival, `HH:MM`; null where not told. */
  readonly arrived: string | null;
}

/** Something was written for the world outside. */
export type HandedIn = Extract<JournalEvent['what'], { kind: 'handed-in' }> & { readonly at: string };

/** What the teacher has decided so far: only decisions in force; a key that is not there is undecided. */
export interface Decisions {
  readonly stationOf: ReadonlyMap<ClipId, StationCode>;
  readonly squadOf: ReadonlyMap<ClipId, SquadCode>;
  /** `none`: the teacher set the clip aside. */
  readonly slotOf: ReadonlyMap<ClipId, SlotIndex | 'none'>;
  /** Seconds to add to what the squad's tablet shows. */
  readonly clockCorrectionSeconds: ReadonlyMap<SquadCode, Seconds>;
  /** Per clip, per criterion code: met or not. */
  readonly answers: ReadonlyMap<ClipId, ReadonlyMap<string, boolean>>;
  /** Per clip, the teacher's note. */
  readonly notes: ReadonlyMap<ClipId, string>;
  /** Per clip, the performers in its picture. */
  readonly lanesOf: ReadonlyMap<ClipId, GivenLanes>;
  readonly flags: ReadonlyMap<FlagKey, FlagAnswer>;
  /** Per squad, per squad criterion code: points. */
  readonly squadPoints: ReadonlyMap<SquadCode, ReadonlyMap<string, number>>;
  /** By pupil id. */
  readonly attendance: ReadonlyMap<string, AttendanceWord>;
  /** Keys as {@link getOverrideKey} gives them. */
  readonly overrides: ReadonlyMap<string, Override>;
  /** Every hand-in, oldest first. */
  readonly handedIn: readonly HandedIn[];
}

/** The key under which {@link Decisions} keeps an override: `pupil:k-0417`, `squad:plum`, `clip:7c1e…`. */
export function getOverrideKey(of: OverrideTarget): string {
  if (of.type === 'pupil') return `pupil:${of.pupil}`;
  return of.type === 'squad' ? `squad:${of.squad}` : `clip:${of.clip}`;
}

/** The decisions of an empty journal: nothing is decided yet. */
export function buildNoDecisions(): Decisions {
  return foldDecisions([], []);
}

/** What the decisions in force add up to, later ones over earlier ones. */
export function foldDecisions(inForce: readonly JournalDecision[], handedIn: readonly HandedIn[]): Decisions {
  const draft = {
    stationOf: new Map<ClipId, StationCode>(),
    squadOf: new Map<ClipId, SquadCode>(),
    slotOf: new Map<ClipId, SlotIndex | 'none'>(),
    clockCorrectionSeconds: new Map<SquadCode, Seconds>(),
    answers: new Map<ClipId, Map<string, boolean>>(),
    notes: new Map<ClipId, string>(),
    lanesOf: new Map<ClipId, GivenLanes>(),
    flags: new Map<FlagKey, FlagAnswer>(),
    squadPoints: new Map<SquadCode, Map<string, number>>(),
    attendance: new Map<string, AttendanceWord>(),
    overrides: new Map<string, Override>(),
    handedIn,
  };
  for (const decision of inForce) applyDecision(draft, decision);
  return draft;
}

type Draft = { -readonly [Field in keyof Decisions]: MutableMap<Decisions[Field]> };

type MutableMap<Value> =
  Value extends ReadonlyMap<infer Key, infer Entry> ? Map<Key, MutableMap<Entry>> : Value;

/** Gives the part of the draft that it changed. */
function applyDecision(draft: Draft, decision: JournalDecision): object {
  switch (decision.kind) {
    case 'station-set':
      return put(draft.stationOf, decision.clip, decision.station);
    case 'clip-moved':
      return put(draft.squadOf, decision.clip, decision.squad);
    case 'clip-placed':
      return put(draft.slotOf, decision.clip, decision.slot);
    case 'clock-set':
      return put(draft.clockCorrectionSeconds, decision.squad, decision.correctionSeconds);
    case 'criterion-marked':
      return put(getInner(draft.answers, decision.clip), decision.criterion, decision.met);
    case 'clip-confirmed': {
      const answers = getInner(draft.answers, decision.clip);
      for (const [criterion, met] of Object.entries(decision.answers)) put(answers, criterion, met);
      return answers;
    }
    case 'clip-noted':
      return put(draft.notes, decision.clip, decision.text);
    case 'lanes-set':
      return put(draft.lanesOf, decision.clip, decision.lanes);
    case 'flag-settled': {
      const { settled, reason } = decision;
      return put(draft.flags, decision.flag, settled && { settled, reason });
    }
    case 'squad-marked':
      return put(getInner(draft.squadPoints, decision.squad), decision.criterion, decision.points);
    case 'attendance-set': {
      const { attendance, arrived } = decision;
      return put(draft.attendance, decision.pupil, attendance && { attendance, arrived });
    }
    case 'points-overridden': {
      const { change, reason } = decision;
      return put(draft.overrides, getOverrideKey(decision.of), change && { change, reason });
    }
  }
}

/** Null takes the word back. */
function put<Key, Value>(map: Map<Key, Value>, key: Key, value: Value | null): object {
  if (value === null) map.delete(key);
  else map.set(key, value);
  return map;
}

function getInner<Key, InnerKey, Value>(map: Map<Key, Map<InnerKey, Value>>, key: Key): Map<InnerKey, Value> {
  const inner = map.get(key) ?? new Map<InnerKey, Value>();
  map.set(key, inner);
  return inner;
}
