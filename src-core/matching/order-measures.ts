import { findHeaviestIncrease } from './increasing-subsequence.ts';

/** How far a squad's walk was from its route, over the clips that count and have a place in time. */
export interface OrderMeasures {
  /** Pairs of clips filmed the other way round than the route says, and the most pairs there could be. */
  readonly kendallTau: { readonly distance: number; readonly max: number };
  /** Clips that may stay when the smallest out-of-order set goes, as a share 0 to 1; null where no clip counts. */
  readonly shareInOrder: number | null;
}

/**
 * Measures the slots of a squad's counting clips, given in the order they were filmed.
 *
 * The distance is Kendall's: discordant pairs (Kendall 1938, "A New Measure of Rank Correlation"), 0 for the
 * route itself and n(n−1)/2 for the route walked backwards. Equal slots count as no inversion.
 */
export function measureOrder(slotsAsFilmed: readonly number[]): OrderMeasures {
  const count = slotsAsFilmed.length;
  const { kept } = findHeaviestIncrease(slotsAsFilmed.map((value) => ({ value, weight: 1 })));
  return {
    kendallTau: { distance: countInversions(slotsAsFilmed), max: (count * count - count) / 2 },
    shareInOrder: count === 0 ? null : kept.length / count,
  };
}

/** How many pairs stand in falling order; a sequence has at most a few dozen items, so every pair is looked at. */
export function countInversions(values: readonly number[]): number {
  let inversions = 0;
  values.forEach((value, position) => {
    for (const later of values.slice(position + 1)) if (later < value) inversions += 1;
  });
  return inversions;
}
