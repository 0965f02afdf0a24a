import { describe, expect, test } from 'vitest';
import { measureOrder } from '../../../src-core/matching/order-measures.ts';

describe('how far a walk was from its route', () => {
  test('a walk in order has no inverted pair and is wholly in order', () => {
    expect(measureOrder([0, 1, 3])).toEqual({ kendallTau: { distance: 0, max: 3 }, shareInOrder: 1 });
  });

  test('one swap inverts one pair and costs one clip', () => {
    expect(measureOrder([0, 2, 1, 3])).toEqual({ kendallTau: { distance: 1, max: 6 }, shareInOrder: 0.75 });
  });

  test('a single clip is in order', () => {
    expect(measureOrder([4])).toEqual({ kendallTau: { distance: 0, max: 0 }, shareInOrder: 1 });
  });

  test('without clips there is no share, rather than a whole or an empty one', () => {
    expect(measureOrder([])).toEqual({ kendallTau: { distance: 0, max: 0 }, shareInOrder: null });
  });
});
