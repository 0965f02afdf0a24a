import type { SlotIndex, SquadCode, StationCode } from '../lesson/plan.ts';
import type { EpochMs, Seconds } from '../platform/units.ts';
import type { ClipId } from './observation.ts';

/** Why a clip's time is doubted. */
export type ClockDoubt =
  | 'no-date'
  | 'date-only'
  | 'weak-source'
  | 'local-ambiguous'
  | 'export-date'
  | 'tablet-clock';

/** What speaks for another squad's having filmed a clip. */
export type SquadHint =
  | { readonly kind: 'recorder'; readonly name: string }
  | { readonly kind: 'overlap'; readonly clip: ClipId }
  | { readonly kind: 'fills-gap'; readonly station: StationCode }
  | { readonly kind: 'name-series'; readonly neighbour: string };

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
      /** The in-order neighbour that this clip was filmed on the wrong side of. */
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
      /** Clips filed elsewhere that could fill the slot. */
      readonly candidates: readonly ClipId[];
    }
  | { readonly code: 'extra'; readonly clip: ClipId; readonly station: StationCode | null }
  | {
      readonly code: 'retake';
      readonly clip: ClipId;
      readonly slot: SlotIndex;
      /** The clip of this slot that counts by the plan's rule. */
      readonly counts: ClipId;
    }
  | {
      readonly code: 'wrong-place';
      readonly clip: ClipId;
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
      readonly clip: ClipId;
      readonly doubt: ClockDoubt;
      readonly uncertaintySeconds: Seconds;
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
      readonly hints: readonly SquadHint[];
    }
  | { readonly code: 'unreadable'; readonly clip: ClipId; readonly problem: string }
  | { readonly code: 'too-short'; readonly clip: ClipId; readonly durationSeconds: Seconds }
);

/** A flag's kind. */
export type FlagCode = Flag['code'];

/** A flag's identity within its lesson, stable across runs: `out-of-order:plum:7c1e…`, `missing:amber:4`. */
export type FlagKey = string;

/** The key under which a flag is settled in the journal. */
export function getFlagKey(flag: Flag): FlagKey {
  return `${flag.code}:${flag.squad}:${flag.clip ?? flag.slot}`;
}
