import type { OrderRule, SlotIndex, StationCode } from '../lesson/plan.ts';
import type { ClipId } from '../matching/observation.ts';
import type { Override } from './decisions.ts';
import type { OverrideTarget, PointsChange } from './journal-event.ts';
import { getVoidedSlots } from './order-rule.ts';
import { boundPoints, roundPoints } from './share.ts';
import type { SlotScore, SquadMark } from './squad-score.ts';

/** Why a slot gave what it gave: `order` wins over `criteria`. */
export type SlotReason = 'earned' | 'criteria' | 'order' | 'no-clip';

/** Where points came from. The parts of a sum add up to it exactly. */
export type SumPart =
  | {
      readonly code: 'slot';
      readonly slot: SlotIndex;
      readonly station: StationCode;
      readonly clip: ClipId | null;
      readonly points: number;
      readonly max: number;
      readonly reason: SlotReason;
      /** Criteria that are not met, or not yet answered, by code. */
      readonly unmet: readonly string[];
      /** Of these, the ones for which nothing is answered and nothing is proposed. */
      readonly open: readonly string[];
      /** Whether the teacher stands behind every answer; a slot without a clip has none to stand behind. */
      readonly confirmed: boolean;
    }
  | {
      readonly code: 'squad-criterion';
      readonly criterion: string;
      readonly points: number;
      readonly max: number;
      readonly confirmed: boolean;
    }
  | {
      readonly code: 'override';
      readonly of: OverrideTarget['type'];
      /** The slot of the clip whose points were changed; null for squads and pupils. */
      readonly slot: SlotIndex | null;
      /** What was asked. */
      readonly change: PointsChange;
      readonly reason: string;
      /** What it came to, within 0 and the maximum; below 0 where points were taken away. */
      readonly points: number;
    };

/** Points with an account of themselves. */
export interface Sum {
  readonly points: number;
  /** Of these, what the slots gave, overrides of clips included. */
  readonly clipPoints: number;
  readonly max: number;
  readonly parts: readonly SumPart[];
}

/** What a sum is made of. */
export interface SumInput {
  /** The slots that count. Order is judged among these alone: nobody loses for a break before they came. */
  readonly slots: readonly SlotScore[];
  readonly criteria: readonly SquadMark[];
  /** Overrides of the sum as a whole, applied one after the other. */
  readonly overrides: readonly { readonly of: 'squad' | 'pupil'; readonly override: Override }[];
}

/**
 * Adds up slots and squad criteria under an order rule. An override is the last word on what it changes: a clip's
 * stands even where the order rule gives nothing, a squad's is applied to the sum of each of its pupils, a
 * pupil's after that; each result is kept between 0 and the maximum.
 */
export function addPoints(input: SumInput, rule: OrderRule): Sum {
  const voided = getVoidedSlots(
    rule,
    input.slots.map(({ order }) => order),
  );
  const slotParts = input.slots.flatMap((slot) => buildSlotParts(slot, voided.has(slot.slot)));
  const squadParts = input.criteria.map(
    (mark): SumPart => ({
      code: 'squad-criterion',
      criterion: mark.criterion,
      points: mark.decided ?? 0,
      max: mark.max,
      confirmed: mark.decided !== null,
    }),
  );
  const max = roundPoints(addMax(input.slots) + addMax(input.criteria));
  const parts = [...slotParts, ...squadParts];
  for (const { of, override } of input.overrides) {
    parts.push(buildOverride({ of, slot: null }, override, { points: total(parts), max }));
  }
  return { points: total(parts), clipPoints: total(slotParts), max, parts };
}

function buildSlotParts(score: SlotScore, isVoided: boolean): SumPart[] {
  const { slot, station, clip, max, override } = score;
  const points = clip && !isVoided ? clip.earned : 0;
  const part: SumPart = {
    code: 'slot',
    slot,
    station,
    clip: clip?.clip ?? null,
    points,
    max,
    reason: getReason(score, isVoided),
    unmet: listCriteria(score, (shown) => shown !== true),
    open: listCriteria(score, (shown) => shown === null),
    confirmed: clip?.confirmed ?? true,
  };
  return override ? [part, buildOverride({ of: 'clip', slot }, override, { points, max })] : [part];
}

function listCriteria({ clip }: SlotScore, isWanted: (shown: boolean | null) => boolean): string[] {
  return (clip?.criteria ?? []).filter(({ shown }) => isWanted(shown)).map(({ criterion }) => criterion);
}

function getReason({ clip }: SlotScore, isVoided: boolean): SlotReason {
  if (!clip) return 'no-clip';
  if (isVoided) return 'order';
  return clip.criteria.every(({ shown }) => shown === true) || clip.earned > 0 ? 'earned' : 'criteria';
}

function buildOverride(
  target: { readonly of: OverrideTarget['type']; readonly slot: SlotIndex | null },
  { change, reason }: Override,
  before: { readonly points: number; readonly max: number },
): SumPart {
  const wanted = change.type === 'to' ? change.points : before.points + change.points;
  const points = roundPoints(boundPoints(wanted, before.max) - before.points);
  return { code: 'override', ...target, change, reason, points };
}

function total(parts: readonly { readonly points: number }[]): number {
  return roundPoints(parts.reduce((sum, { points }) => sum + points, 0));
}

function addMax(parts: readonly { readonly max: number }[]): number {
  return parts.reduce((sum, { max }) => sum + max, 0);
}
