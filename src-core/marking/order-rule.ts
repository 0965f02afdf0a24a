import type { OrderRule, SlotIndex } from '../lesson/plan.ts';

/** A slot as the order rules see it. */
export interface OrderedSlot {
  readonly slot: SlotIndex;
  /** Place of its clip in the order filmed; null where there is no clip, or none that order can be read from. */
  readonly position: number | null;
  /** Its clip is out of order, and the teacher has not said otherwise. */
  readonly broken: boolean;
}

/** The slots that earn nothing under a rule. */
type VoidedSlots = ReadonlySet<SlotIndex>;

/**
 * The slot at which the squad first left its route: the lowest among the broken slots and the slots whose clips
 * were filmed on the wrong side of a broken one. A squad that films C D E, then G before F, left its route at F's
 * slot: what came before it was in order, whichever of the two clips is the one called out of order. Null: never.
 */
export function findFirstBreak(slots: readonly OrderedSlot[]): SlotIndex | null {
  const lowest = slots
    .filter((slot) => slot.broken)
    .flatMap((broken) => [broken, ...slots.filter((other) => isSwapped(broken, other))])
    .reduce((least, { slot }) => Math.min(least, slot), Number.POSITIVE_INFINITY);
  return lowest === Number.POSITIVE_INFINITY ? null : lowest;
}

function isSwapped(a: OrderedSlot, b: OrderedSlot): boolean {
  if (a.position === null || b.position === null) return false;
  return (a.slot - b.slot) * (a.position - b.position) < 0;
}

/** `void-route`: one break and the whole route earns nothing. */
function voidRoute(slots: readonly OrderedSlot[]): VoidedSlots {
  return new Set(slots.some((slot) => slot.broken) ? slots.map(({ slot }) => slot) : []);
}

/** `void-after`: slots from the first break on earn nothing, as {@link findFirstBreak} tells it. */
function voidAfter(slots: readonly OrderedSlot[]): VoidedSlots {
  const first = findFirstBreak(slots);
  return new Set(first === null ? [] : slots.map(({ slot }) => slot).filter((slot) => slot >= first));
}

/** `void-clip`: only the clips out of order earn nothing. */
function voidClip(slots: readonly OrderedSlot[]): VoidedSlots {
  return new Set(slots.filter((slot) => slot.broken).map(({ slot }) => slot));
}

/** `report`: order costs nothing, it is flagged only. */
function voidNothing(): VoidedSlots {
  return new Set();
}

/** Strictest first: each voids all that the next one voids, so points never fall from one to the next. */
export const ORDER_RULES = ['void-route', 'void-after', 'void-clip', 'report'] as const satisfies OrderRule[];

/** The slots that earn nothing under a rule; slots without a clip earn nothing under any. */
export function getVoidedSlots(rule: OrderRule, slots: readonly OrderedSlot[]): VoidedSlots {
  return { 'void-route': voidRoute, 'void-after': voidAfter, 'void-clip': voidClip, report: voidNothing }[
    rule
  ](slots);
}
