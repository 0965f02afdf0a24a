import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  findFirstBreak,
  getVoidedSlots,
  ORDER_RULES,
  type OrderedSlot,
} from '../../../src-core/marking/order-rule.ts';

/** Slots by the order in which their clips were filmed (null: no clip), and the slots called out of order. */
function buildSlots(positions: readonly (number | null)[], broken: readonly number[]): OrderedSlot[] {
  return positions.map((position, slot) => ({ slot, position, broken: broken.includes(slot) }));
}

const voided = (slots: readonly OrderedSlot[]) =>
  ORDER_RULES.map((rule) => [...getVoidedSlots(rule, slots)].sort((a, b) => a - b));

describe('what leaving the order costs', () => {
  test('nothing under any rule while the route is kept', () => {
    expect(voided(buildSlots([0, 1, 2, 3], []))).toEqual([[], [], [], []]);
  });

  test('a missing clip breaks no order', () => {
    expect(voided(buildSlots([0, null, 1, 2], []))).toEqual([[], [], [], []]);
  });

  test('all, from the break on, the clip alone, or nothing: by the rule', () => {
    expect(voided(buildSlots([0, 1, 2, 4, 3, 5, 6], [4]))).toEqual([
      [0, 1, 2, 3, 4, 5, 6],
      [3, 4, 5, 6],
      [4],
      [],
    ]);
  });

  test('the first break is the same whichever of two swapped clips is called out of order', () => {
    expect(findFirstBreak(buildSlots([0, 2, 1, 3], [1]))).toBe(1);
    expect(findFirstBreak(buildSlots([0, 2, 1, 3], [2]))).toBe(1);
  });

  test('a station left for last breaks the route at its own slot', () => {
    expect(findFirstBreak(buildSlots([4, 0, 1, 2, 3], [0]))).toBe(0);
    expect(findFirstBreak(buildSlots([0, 4, 1, 2, 3], [1]))).toBe(1);
  });

  test('a station filmed first of all breaks the route at the slot it jumped over', () => {
    expect(findFirstBreak(buildSlots([1, 2, 3, 0], [3]))).toBe(0);
  });

  test('a clip that the teacher cleared neither breaks the order nor moves another break', () => {
    const cleared = buildSlots([2, 0, 1, 4, 3], [4]).map((slot) =>
      slot.slot === 0 ? { ...slot, position: null } : slot,
    );
    expect(findFirstBreak(cleared)).toBe(3);
  });

  test('a clip called out of order without a place among the others breaks the route at its own slot', () => {
    expect(findFirstBreak(buildSlots([0, 1, null, 2], [2]))).toBe(2);
  });

  test('each rule voids all that the next milder one voids', () => {
    const slots = fc
      .array(fc.record({ position: fc.option(fc.nat(9)), broken: fc.boolean() }), { maxLength: 10 })
      .map((made) => made.map((slot, index) => ({ ...slot, slot: index })));
    fc.assert(
      fc.property(slots, (made) => {
        const sets = ORDER_RULES.map((rule) => getVoidedSlots(rule, made));
        for (const [at, milder] of sets.slice(1).entries()) {
          expect([...milder].every((slot) => sets[at]?.has(slot))).toBe(true);
        }
      }),
    );
  });
});
