import { describe, expect, test } from 'vitest';
import { type AlignmentCosts, align } from '../../../src-core/matching/align.ts';

const never = Number.POSITIVE_INFINITY;

/** Letters match at 0 when equal and never otherwise; gaps cost 1. */
function letters(one: string, other: string, over: Partial<AlignmentCosts> = {}) {
  return align({
    rows: one.length,
    columns: other.length,
    match: (row, column) => (one[row] === other[column] ? 0 : never),
    skipRow: () => 1,
    skipColumn: () => 1,
    ...over,
  });
}

describe('laying two sequences side by side', () => {
  test('says for each row which column it stands for, and how many lay before it', () => {
    expect(letters('AXC', 'ABC').rows).toEqual([
      { column: 0, passed: 0 },
      { column: null, passed: 1 },
      { column: 2, passed: 2 },
    ]);
  });

  test('an empty side costs its gaps', () => {
    expect(letters('', 'ABC').cost).toBe(3);
    expect(letters('AB', '').cost).toBe(2);
    expect(letters('', '').cost).toBe(0);
  });

  test('no way through is an infinite cost and no rows, not a wrong alignment', () => {
    const blocked = letters('AX', 'AB', { skipRow: () => never });
    expect(blocked.cost).toBe(never);
    expect(blocked.rows).toEqual([]);
  });

  test('a skipped row may cost more or less by how far the columns have come', () => {
    const late = letters('XA', 'AB', { skipRow: (_, passed) => (passed === 0 ? 9 : 1) });
    expect(late.cost).toBe(4); // both columns skipped at 1, then both rows at 1
  });

  test('prices an alignment that was not chosen', () => {
    const alignment = letters('AB', 'AB');
    expect(alignment.cost).toBe(0);
    expect(alignment.priceThrough(0, 0, { cost: 1, matches: false })).toBe(2); // A left out on both sides
    expect(alignment.priceThrough(0, 0, { cost: 0, matches: true })).toBe(0);
  });
});
