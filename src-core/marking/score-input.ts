import type { Plan, SlotIndex, SquadCode, StationCode } from '../lesson/plan.ts';
import type { Pupil } from '../lesson/roster.ts';
import type { FlagKey } from '../matching/flag.ts';
import type { ClipId } from '../matching/observation.ts';
import type { EpochMs } from '../platform/units.ts';
import type { Decisions } from './decisions.ts';
import type { Proposal } from './proposal.ts';

/** What became of one slot of a squad's route. */
export interface SlotResult {
  readonly slot: SlotIndex;
  readonly station: StationCode;
  /** The clip that counts for the slot; null where none was found. */
  readonly clip: ClipId | null;
  /** Corrected start of that clip; null without a clip or where only its order is known. */
  readonly startMs: EpochMs | null;
  /** Place of that clip among the squad's clips in the order filmed, from 0; null without a clip or an order. */
  readonly position: number | null;
  /** Key of the flag that calls the clip out of order; null where it is in order. */
  readonly orderFlag: FlagKey | null;
}

/** A squad's route with the clips that fill it: every slot of the route once, in its order. */
export interface SquadResult {
  readonly squad: SquadCode;
  readonly slots: readonly SlotResult[];
}

/** A flag as far as marking must know it: whether it is open is for the decisions to say. */
export interface FlagRef {
  readonly key: FlagKey;
  readonly squad: SquadCode;
  readonly clip: ClipId | null;
  /** The slot that it speaks of, where there is one. */
  readonly slot: SlotIndex | null;
}

/** All that points depend on. */
export interface ScoreInput {
  readonly plan: Plan;
  readonly pupils: readonly Pupil[];
  /** In the order to be shown; a squad without an entry has no clips to mark. */
  readonly squads: readonly SquadResult[];
  readonly proposals: ReadonlyMap<ClipId, readonly Proposal[]>;
  readonly decisions: Decisions;
  /** Every flag of the lesson, open or settled. */
  readonly flags: readonly FlagRef[];
}
