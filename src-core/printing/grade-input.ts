import type { StripStill } from '../evidence/strip.ts';
import type { Plan, SquadCode } from '../lesson/plan.ts';
import type { FlagAnswer } from '../marking/decisions.ts';
import type { LessonScore } from '../marking/points.ts';
import type { ClipAssignment } from '../matching/assignment.ts';
import type { Flag } from '../matching/flag.ts';
import type { ClipId } from '../matching/observation.ts';
import type { EpochMs } from '../platform/units.ts';
import type { SheetOrder } from './sheet-order.ts';

/** One clip as a grade sheet needs it. */
export interface SheetClip {
  readonly id: ClipId;
  /** Without its folders. */
  readonly fileName: string;
  /** Corrected start; null where only its order, or nothing, is known. */
  readonly startMs: EpochMs | null;
  readonly assignment: ClipAssignment;
  /** Every squad whose pupils may be in the picture: whose it is, in whose folders it lay, whose it looks like. */
  readonly mayShow: readonly SquadCode[];
  readonly strip: readonly StripStill[];
}

/** A flag that asked something of the teacher, and the answer. */
export interface SheetFlag {
  readonly flag: Flag;
  /** Null: open. */
  readonly answer: FlagAnswer | null;
}

/** What a grade sheet is made from. */
export interface GradeInput {
  readonly plan: Plan;
  readonly score: LessonScore;
  /** Clips of each squad in the order of filming; squads in the plan's order. */
  readonly squads: readonly { readonly code: SquadCode; readonly clips: readonly SheetClip[] }[];
  readonly flags: readonly SheetFlag[];
  /** Squads of which no still may show; see `lesson/roster.ts`. */
  readonly unshown: readonly SquadCode[];
  readonly order: Pick<SheetOrder, 'isGrey' | 'stills'>;
}
