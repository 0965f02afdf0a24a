import type { TraceHint } from '../intake/other-squad.ts';
import type { ClockDoubt } from '../intake/tablet-times.ts';
import type { SlotIndex, SquadCode, StationCode } from '../lesson/plan.ts';
import type { EpochMs, Seconds } from '../platform/units.ts';
import type { ClipId } from './observation.ts';

/**
 * A reason for the teacher to look, with its evidence: the closed list. `squad` is whose desk it lies on;
 * `clip` is null only where no clip exists.
 */
export type Flag = { readonly squad: SquadCode } & (
  | {
      readonly code: 'out-of-order';
      readonly clip: ClipId;
      readonly slot: SlotIndex;
      readonly station: StationCode;
      /**
       * The in-order clip nearest in time that this clip was filmed on the wrong side of. `side` is where this
       * clip lies seen from that one: `before` means filmed before it although the route comes to it later.
       */
      readonly against: {
        readonly clip: ClipId;
        readonly slot: SlotIndex;
        readonly side: 'before' | 'after';
      };
    }
  | {
      readonly code: 'missing';
      readonly clip: null;
      readonly slot: SlotIndex;
      readonly station: StationCode;
      /** Clips that could fill the slot: unplaced ones of this squad, and any filed elsewhere. */
      readonly candidates: readonly ClipId[];
    }
  | { readonly code: 'extra'; readonly clip: ClipId; readonly station: StationCode | null }
  | {
      readonly code: 'retake';
      readonly clip: ClipId;
      readonly slot: SlotIndex;
      /** The clip of this slot that counts: by the plan's rule, or after a return the one that keeps the order. */
      readonly counts: ClipId;
      /** True where the squad filmed another known station between the two. */
      readonly returned: boolean;
    }
  | {
      readonly code: 'wrong-place';
      readonly clip: ClipId;
      /** The slot in whose time the clip was filmed; it has no missing flag besides. */
      readonly slot: SlotIndex;
      readonly expected: StationCode;
      readonly station: StationCode;
    }
  | {
      readonly code: 'unplaced';
      readonly clip: ClipId;
      /** The explanations that are too near each other to choose; slot null means "belongs to no slot". */
      readonly either: readonly { readonly slot: SlotIndex | null; readonly station: StationCode | null }[];
    }
  | {
      readonly code: 'clock-doubtful';
      /** Null: the whole tablet. */
      readonly clip: ClipId | null;
      readonly doubt: ClockDoubt;
      /** Half width of the interval that holds the true start; Infinity where nothing is known. */
      readonly uncertaintySeconds: Seconds;
      /** A correction of the tablet's clock that would fit the timetable, or null; proposed, never applied. */
      readonly shiftSeconds: Seconds | null;
    }
  | {
      readonly code: 'outside-period';
      readonly clip: ClipId;
      readonly startMs: EpochMs;
      /** Another period of the plan that it falls into, or null. */
      readonly period: string | null;
    }
  | { readonly code: 'handed-in-twice'; readonly clip: ClipId; readonly alsoIn: readonly SquadCode[] }
  | {
      readonly code: 'other-squad';
      readonly clip: ClipId;
      readonly likely: SquadCode;
      readonly hints: readonly TraceHint[];
    }
  | {
      /** The same footage in another file: exported anew, sent through another app. */
      readonly code: 'same-footage';
      readonly clip: ClipId;
      readonly like: ClipId;
      /** The squad that handed the other one in; null: nobody's yet. */
      readonly likeSquad: SquadCode | null;
    }
  | { readonly code: 'unreadable'; readonly clip: ClipId; readonly problem: string }
  | { readonly code: 'too-short'; readonly clip: ClipId; readonly durationSeconds: Seconds }
);

/** A flag's kind: what the faces word, and the first part of its key. */
export type FlagCode = Flag['code'];

/** A flag's identity within its lesson, stable across runs: `out-of-order:plum:7c1e…`, `missing:amber:4`. */
export type FlagKey = string;

/** The key under which a flag is settled in the journal. */
export function getFlagKey(flag: Flag): FlagKey {
  return `${flag.code}:${flag.squad}:${flag.clip ?? ('slot' in flag ? flag.slot : 'tablet')}`;
}
