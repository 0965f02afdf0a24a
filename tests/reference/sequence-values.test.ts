import fc from 'fast-check';
import { distance as levenshteinByLibrary } from 'fastest-levenshtein';
import { sampleRankCorrelation } from 'simple-statistics';
import { describe, expect, test } from 'vitest';
import { align } from '../../src-core/matching/align.ts';
import { findHeaviestIncrease } from '../../src-core/matching/increasing-subsequence.ts';
import { matchSquad } from '../../src-core/matching/match-squad.ts';
import type { PlacedClip } from '../../src-core/matching/observation.ts';
import { countInversions, measureOrder } from '../../src-core/matching/order-measures.ts';

function longestIncrease(values: readonly number[]): number {
  return findHeaviestIncrease(values.map((value) => ({ value, weight: 1 }))).kept.length;
}

/** Aligns two texts letter by letter; the cost of a match is 0 or `differ`. */
function alignTexts(
  one: string,
  other: string,
  costs: { same: number; differ: number; gap: number },
): number {
  return align({
    rows: one.length,
    columns: other.length,
    match: (row, column) => (one[row] === other[column] ? costs.same : costs.differ),
    skipRow: () => costs.gap,
    skipColumn: () => costs.gap,
  }).cost;
}

function levenshtein(one: string, other: string): number {
  return alignTexts(one, other, { same: 0, differ: 1, gap: 1 });
}

function* permute(values: readonly number[]): Generator<number[]> {
  if (values.length === 0) yield [];
  for (const [position, first] of values.entries()) {
    for (const rest of permute(values.toSpliced(position, 1))) yield [first, ...rest];
  }
}

function allOrders(count: number): number[][] {
  return [...permute([...Array(count).keys()])];
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

describe('longest increasing subsequence', () => {
  test('van der Corput’s first sixteen numbers: 6 (Wikipedia, “Longest increasing subsequence”, Example)', () => {
    expect(longestIncrease([0, 8, 4, 12, 2, 10, 6, 14, 1, 9, 5, 13, 3, 11, 7, 15])).toBe(6);
  });

  // OEIS A047874, "Triangle of numbers T(n,k) = number of permutations of n items with longest increasing
  // subsequence of length k"; from memory, and each row adds up to n!.
  test.each([
    { count: 4, ofLength: [1, 13, 9, 1] },
    { count: 5, ofLength: [1, 41, 61, 16, 1] },
    { count: 6, ofLength: [1, 131, 381, 181, 25, 1] },
    { count: 7, ofLength: [1, 428, 2332, 1821, 421, 36, 1] },
  ])(
    'the orders of $count things by their longest increase: $ofLength (OEIS A047874)',
    ({ count, ofLength }) => {
      const lengths = allOrders(count).map(longestIncrease);
      expect(ofLength.map((_, index) => lengths.filter((length) => length === index + 1).length)).toEqual(
        ofLength,
      );
    },
  );

  // Follows from the rows of A047874.
  test.each([
    { count: 4, expected: 2.41667 },
    { count: 5, expected: 2.79167 },
    { count: 6, expected: 3.14028 },
  ])('on average over all orders of $count things: $expected', ({ count, expected }) => {
    expect(mean(allOrders(count).map(longestIncrease))).toBeCloseTo(expected, 5);
  });
});

describe('Kendall’s distance', () => {
  test('0 3 2 1 4 is 3 from 0 1 2 3 4 (Java Permutation Tools, class KendallTauDistance, worked example)', () => {
    expect(countInversions([0, 3, 2, 1, 4])).toBe(3);
    expect(longestIncrease([0, 3, 2, 1, 4])).toBe(3);
  });

  test('D B A C and A B D C are 3 swaps of neighbours apart (sciref.net, entry o40692)', () => {
    expect(countInversions([...'DBAC'].map((letter) => 'ABDC'.indexOf(letter)))).toBe(3);
  });

  // math.ucla.edu/~tom/distributions/KendallTau.html, "Distribution of Kendall's tau": mean n(n−1)/4. Its variance
  // is printed with n(n+1), which even n = 2 (distances 0 and 1, variance 1/4) refutes; n(n−1)(2n+5)/72 is Kendall &
  // Gibbons, "Rank Correlation Methods", from memory.
  test.each([2, 3, 4, 5, 6])(
    'over all orders of %i things: mean n(n−1)/4, variance n(n−1)(2n+5)/72',
    (count) => {
      const distances = allOrders(count).map(countInversions);
      const average = mean(distances);
      expect(average).toBeCloseTo((count * (count - 1)) / 4, 12);
      const variance = mean(distances.map((distance) => (distance - average) ** 2));
      expect(variance).toBeCloseTo((count * (count - 1) * (2 * count + 5)) / 72, 9);
    },
  );

  // Kendall & Gibbons, "Rank Correlation Methods", on ρ as inversions weighted by how far apart the pair lies
  // (Σd² = 2·Σ weight); from memory, and checked here against the library's ρ.
  test('never exceeds the weighted inversions in Spearman’s ρ as simple-statistics computes it', () => {
    const count = 6;
    const route = [...Array(count).keys()];
    for (const order of allOrders(count)) {
      const { distance, max } = measureOrder(order).kendallTau;
      const rho = sampleRankCorrelation(route, order);
      const weighted = (count * (count ** 2 - 1) * (1 - rho)) / 12;
      expect(distance).toBeLessThanOrEqual(weighted + 1e-9);
      expect(distance === 0).toBe(rho > 1 - 1e-9);
      expect(distance === max).toBe(rho < -1 + 1e-9);
      const apart = order.some((value, at) => order.slice(at + 2).some((later) => later < value));
      if (!apart) expect(weighted).toBeCloseTo(distance, 9);
    }
  });
});

describe('alignment with unit costs is Levenshtein’s distance (substitution, no transposition)', () => {
  // Textbook pairs: Wikipedia, "Levenshtein distance", Example and Upper and lower bounds; Jurafsky & Martin,
  // "Speech and Language Processing", Minimum Edit Distance (intention/execution). All from memory; the library agrees.
  test.each([
    ['kitten', 'sitting', 3],
    ['Saturday', 'Sunday', 3],
    ['intention', 'execution', 5],
    ['flaw', 'lawn', 2],
    ['ABCDE', 'ABDCE', 2],
    ['CA', 'ABC', 3],
    ['', 'ABC', 3],
    ['ABC', 'ABC', 0],
  ])('%s and %s are %i apart', (one, other, expected) => {
    expect(levenshtein(one, other)).toBe(expected);
    expect(levenshteinByLibrary(one, other)).toBe(expected);
  });

  test('agrees with fastest-levenshtein on random words', () => {
    const word = fc.string({ unit: fc.constantFrom(...'ABCD'), maxLength: 12 });
    fc.assert(
      fc.property(word, word, (one, other) => levenshtein(one, other) === levenshteinByLibrary(one, other)),
      { numRuns: 500 },
    );
  });
});

describe('alignment is Needleman and Wunsch’s', () => {
  // Wikipedia, "Needleman–Wunsch algorithm": the worked example with match +1, mismatch −1, gap −1; from memory.
  test.each(['GCATGCG', 'GCATGCU'])('%s against GATTACA scores 0 with +1, −1, −1', (one) => {
    expect(-alignTexts(one, 'GATTACA', { same: -1, differ: 1, gap: 1 })).toBeCloseTo(0, 12);
  });
});

describe('a route of six stations', () => {
  const route = [...'ABCDEF'];
  const match = (walked: string) =>
    matchSquad({
      squad: 'plum',
      route,
      retake: 'last',
      clips: [...walked].map(
        (station, position): PlacedClip => ({
          clip: `${position}`,
          startMs: null,
          uncertaintySeconds: 2,
          hasOrder: true,
          slotByTeacher: null,
          observation: { known: true, station, from: 'card' },
        }),
      ),
    });

  // By definition of the measures.
  test.each([
    { walked: 'ABCDEF', edits: 0, inversions: 0, pairs: 15, kept: 6 },
    { walked: 'ABDEF', edits: 1, inversions: 0, pairs: 10, kept: 5 },
    { walked: 'ABDCEF', edits: 2, inversions: 1, pairs: 15, kept: 5 },
    { walked: 'FEDCBA', edits: 6, inversions: 15, pairs: 15, kept: 1 },
  ])('walked as $walked: $inversions of $pairs pairs inverted, $kept clips in order', (expected) => {
    const { order } = match(expected.walked);
    expect(levenshtein(expected.walked, 'ABCDEF')).toBe(expected.edits);
    expect(order.kendallTau).toEqual({ distance: expected.inversions, max: expected.pairs });
    expect(order.shareInOrder).toBeCloseTo(expected.kept / expected.walked.length, 12);
  });

  test('a repeated visit is a second take, not an order error', () => {
    const { order, flags } = match('AABCDEF');
    expect(order.kendallTau.distance).toBe(0);
    expect(flags.map(({ code }) => code)).toEqual(['retake']);
  });

  test('a station that is not on the route stays out of the distance and is flagged by itself', () => {
    const { order, flags } = match('ABXCDEF');
    expect(order.kendallTau).toEqual({ distance: 0, max: 15 });
    expect(flags.map(({ code }) => code)).toEqual(['extra']);
  });
});
