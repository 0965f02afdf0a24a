import type { SlotIndex } from '../lesson/plan.ts';
import type { ClipRole, NamedChoice } from './assignment.ts';
import type { ExplainedWalk } from './explain-walk.ts';
import { CHOICE_MARGIN } from './matching-costs.ts';
import { findScore, type Reading } from './reading.ts';
import { isOpen, type Walk } from './walk.ts';
import type { WalkClip } from './walk-clip.ts';

/** What was made of a clip: its role and slot, and for an unplaced one the explanations too near to choose. */
export interface SettledClip {
  readonly clip: WalkClip;
  readonly role: ClipRole;
  readonly slot: SlotIndex | null;
  readonly either: readonly NamedChoice[];
}

/** Guards the margin against rounding of sums of costs. */
const ROUNDING = 1e-9;

/**
 * Turns the cheapest explanation into roles, one per clip in the order given, and steps back to `unplaced`
 * wherever it is not clearly the best:
 * - a clip whose next best place costs less than the margin more, except one that counts at a known station;
 * - an unknown clip left over while a slot is empty: it may have been filmed there out of order, and a guess
 *   must not accuse;
 * - a clip without order and station, unless it alone is left over and one slot alone is empty.
 */
export function settleClips(walk: Walk, explained: ExplainedWalk): SettledClip[] {
  const settled = new Map<WalkClip, SettledClip>();
  for (const clip of walk.rows) settled.set(clip, settleOrdered(walk, explained, clip));
  for (const clip of walk.clips) {
    if (clip.row === null && clip.ownSlot !== null) settled.set(clip, settleOwn(explained, clip));
  }
  applyRuleToGuesses(walk, settled);

  const unordered = walk.clips.filter((clip) => clip.row === null && clip.ownSlot === null);
  const empty = listEmptySlots(walk, [...settled.values()]);
  for (const one of [...settled.values()]) {
    if (one.role === 'extra' && one.clip.station === null && empty.length > 0) {
      settled.set(one.clip, leaveUnplaced(walk, one.clip, [...empty, null]));
    }
  }
  const adrift = [...settled.values()].filter((one) => one.role === 'unplaced').length + unordered.length;
  for (const clip of unordered) settled.set(clip, settleUnordered(walk, clip, { empty, adrift }));
  return walk.clips.flatMap((clip) => settled.get(clip) ?? []);
}

function settleOwn({ best }: ExplainedWalk, clip: WalkClip): SettledClip {
  const isHome = clip.ownSlot !== null && best.homes[clip.ownSlot] === clip;
  return { clip, role: isHome ? 'counts' : 'retake', slot: clip.ownSlot, either: [] };
}

function settleOrdered(walk: Walk, explained: ExplainedWalk, clip: WalkClip): SettledClip {
  const row = clip.row ?? 0;
  const reading = explained.best.readings[row] ?? { role: 'extra', slot: null, cost: 0 };
  const near = listNearChoices(explained, row);
  const isHome = clip.ownSlot !== null && explained.best.homes[clip.ownSlot] === clip;
  if (isHome || near.length < 2) return { clip, role: reading.role, slot: reading.slot, either: [] };
  return { clip, role: 'unplaced', slot: null, either: near.map((choice) => nameChoice(walk, clip, choice)) };
}

function listNearChoices({ choices }: ExplainedWalk, row: number): Reading[] {
  const [cheapest, ...others] = choices[row] ?? [];
  if (cheapest === undefined) return [];
  return [cheapest, ...others.filter(({ cost }) => cost - cheapest.cost < CHOICE_MARGIN - ROUNDING)];
}

function nameChoice(walk: Walk, clip: WalkClip, { role, slot }: Pick<Reading, 'role' | 'slot'>): NamedChoice {
  const there = slot === null || role === 'wrong-place' ? null : (walk.route[slot] ?? null);
  return { slot, station: clip.station ?? there };
}

/** Among guessed takes of one open slot the plan's rule says which counts; repeats of a wrong place are extras. */
function applyRuleToGuesses(walk: Walk, settled: Map<WalkClip, SettledClip>): void {
  walk.route.forEach((_, slot) => {
    if (!isOpen(walk, slot)) return;
    const there = [...settled.values()].filter((one) => one.slot === slot);
    const guesses = there.filter((one) => one.role !== 'wrong-place');
    const counting = walk.retake === 'last' ? guesses.at(-1) : guesses[0];
    const spoilt = there.length > guesses.length;
    for (const one of guesses) {
      const role = one === counting ? 'counts' : 'retake';
      settled.set(one.clip, spoilt ? { ...one, role: 'extra', slot: null } : { ...one, role });
    }
  });
}

/** Slots that nothing stands in: no counting clip, and no wrong place in their time. */
export function listEmptySlots(walk: Walk, settled: readonly SettledClip[]): SlotIndex[] {
  const filled = new Set(settled.map((one) => one.slot));
  return [...walk.route.keys()].filter((slot) => !filled.has(slot));
}

function settleUnordered(
  walk: Walk,
  clip: WalkClip,
  { empty, adrift }: { readonly empty: readonly SlotIndex[]; readonly adrift: number },
): SettledClip {
  const [slot] = empty;
  if (clip.station !== null || slot === undefined) return { clip, role: 'extra', slot: null, either: [] };
  const looksDeny = (findScore(clip.placed.observation, walk.route[slot] ?? '') ?? 1) < 0.5;
  if (empty.length === 1 && adrift === 1 && !looksDeny) return { clip, role: 'counts', slot, either: [] };
  const mayBeSpare = looksDeny || adrift > empty.length;
  return leaveUnplaced(walk, clip, mayBeSpare ? [...empty, null] : empty);
}

function leaveUnplaced(walk: Walk, clip: WalkClip, slots: readonly (SlotIndex | null)[]): SettledClip {
  const either = slots.map((slot) => nameChoice(walk, clip, { role: 'counts', slot }));
  return { clip, role: 'unplaced', slot: null, either };
}
