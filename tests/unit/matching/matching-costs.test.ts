import { describe, expect, test } from 'vitest';
import { CHOICE_MARGIN, matchingCosts as cost } from '../../../src-core/matching/matching-costs.ts';

// The values are judgement; these are the comparisons that set them.
describe('the cost table', () => {
  const leftOver = cost.extra + cost.missingSlot;

  test('a free slot in order is clearly a better guess than an extra beside a missing slot', () => {
    expect(leftOver - cost.inferred).toBeGreaterThan(CHOICE_MARGIN);
  });

  test('a guess that puts a known clip out of order is never clearly better than no guess', () => {
    expect(cost.outOfOrder + cost.inferred).toBeGreaterThan(leftOver - CHOICE_MARGIN);
  });

  test('with a free slot, a second visit is a retake when quick, a wrong place when late, neither when untimed', () => {
    expect(cost.wrongPlace - (cost.retakeSoon + cost.missingSlot)).toBeGreaterThanOrEqual(CHOICE_MARGIN);
    expect(cost.retakeLate + cost.missingSlot - cost.wrongPlace).toBeGreaterThanOrEqual(CHOICE_MARGIN);
    expect(Math.abs(cost.retakeUntimed + cost.missingSlot - cost.wrongPlace)).toBeLessThan(CHOICE_MARGIN);
  });

  test('a station off the route in a free slot’s time is a wrong place rather than an extra', () => {
    expect(leftOver - cost.wrongPlace).toBeGreaterThanOrEqual(CHOICE_MARGIN);
  });

  test('coming back to a station is cheaper against the rule than against the order', () => {
    expect(cost.againstRule).toBeLessThan(cost.outOfOrder);
  });

  test('looks at their strongest against the only free slot make the guess doubtful', () => {
    expect(cost.inferred + cost.looksLimit).toBeGreaterThan(leftOver - CHOICE_MARGIN);
  });
});
