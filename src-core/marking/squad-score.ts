import type { SlotIndex, SquadCode, StationCode } from '../lesson/plan.ts';
import { type ClipScore, getClipMax, scoreClip } from './clip-score.ts';
import { getOverrideKey, type Override } from './decisions.ts';
import { findFirstBreak, type OrderedSlot } from './order-rule.ts';
import type { FlagRef, ScoreInput, SlotResult, SquadResult } from './score-input.ts';
import { boundPoints } from './share.ts';

/** One slot of a squad, marked. */
export interface SlotScore {
  readonly slot: SlotIndex;
  readonly station: StationCode;
  readonly clip: ClipScore | null;
  /** How it is drawn: by the teacher's hand, by the machine's, waiting on an open flag, or without a clip. */
  readonly state: 'inked' | 'pencilled' | 'flagged' | 'no-clip';
  readonly order: OrderedSlot;
  readonly max: number;
  /** The clip's points changed by hand; null where they are not. */
  readonly override: Override | null;
}

/** How a squad as a whole stands with one of its own criteria. The machine proposes nothing here. */
export interface SquadMark {
  readonly criterion: string;
  /** The teacher's points, kept within the maximum; null where undecided, which counts as 0. */
  readonly decided: number | null;
  readonly max: number;
}

/** A squad's slots and criteria before they are added up. */
export interface SquadSheet {
  readonly squad: SquadCode;
  /** In the route's order. */
  readonly slots: readonly SlotScore[];
  readonly criteria: readonly SquadMark[];
  readonly override: Override | null;
  /** Flags of this squad, or of a clip that counts for it, that nobody has settled. */
  readonly openFlags: readonly FlagRef[];
  /** Where the squad first left its route, or null; see `order-rule.ts`. */
  readonly firstBreak: SlotIndex | null;
}

/** Flags that nobody has settled, of all squads. */
export function findOpenFlags(input: ScoreInput): readonly FlagRef[] {
  return input.flags.filter(({ key }) => !input.decisions.flags.has(key));
}

/** Everything that a squad's sums are made of. */
export function buildSquadSheet(input: ScoreInput, result: SquadResult): SquadSheet {
  const { plan, decisions } = input;
  // A flag may be filed under another squad than the one whose clip it is about.
  const own = new Set(result.slots.map(({ clip }) => clip));
  const openFlags = findOpenFlags(input).filter(
    ({ squad, clip }) => squad === result.squad || (clip !== null && own.has(clip)),
  );
  const slots = result.slots.map((slot) => buildSlot(input, slot, openFlags));
  const points = decisions.squadPoints.get(result.squad);
  return {
    squad: result.squad,
    slots,
    criteria: plan.rubric.squad.map(({ code, maxPoints }) => {
      const decided = points?.get(code) ?? null;
      return {
        criterion: code,
        decided: decided === null ? null : boundPoints(decided, maxPoints),
        max: maxPoints,
      };
    }),
    override: decisions.overrides.get(getOverrideKey({ type: 'squad', squad: result.squad })) ?? null,
    openFlags,
    firstBreak: findFirstBreak(slots.map(({ order }) => order)),
  };
}

function buildSlot(input: ScoreInput, result: SlotResult, openFlags: readonly FlagRef[]): SlotScore {
  const { slot, station, clip: id } = result;
  const { overrides } = input.decisions;
  const clip = id === null ? null : scoreClip(input, id);
  const isFlagged = openFlags.some((flag) => (flag.clip === null ? flag.slot === slot : flag.clip === id));
  return {
    slot,
    station,
    clip,
    state: getState(clip, isFlagged),
    order: getOrder(input, result),
    max: getClipMax(input.plan),
    override: (id !== null && overrides.get(getOverrideKey({ type: 'clip', clip: id }))) || null,
  };
}

function getState(clip: ClipScore | null, isFlagged: boolean): SlotScore['state'] {
  if (!clip) return 'no-clip';
  if (isFlagged) return 'flagged';
  return clip.confirmed ? 'inked' : 'pencilled';
}

/** A clip that the teacher has cleared of being out of order neither breaks the order nor shows another one broken. */
function getOrder(input: ScoreInput, { slot, position, orderFlag }: SlotResult): OrderedSlot {
  if (orderFlag === null) return { slot, position, broken: false };
  const isCleared = input.decisions.flags.get(orderFlag)?.settled === 'cleared';
  return isCleared ? { slot, position: null, broken: false } : { slot, position, broken: true };
}
