/** One element of a sequence to be put in order. */
export interface WeightedItem {
  /** What must rise strictly from one kept item to the next. */
  readonly value: number;
  /** What keeping the item is worth: a whole number above 0, so that ties are exact. */
  readonly weight: number;
}

/** A sequence split in two: positions that rise, and the positions that had to go for it; both ascending. */
export interface OrderSplit {
  readonly kept: readonly number[];
  readonly dropped: readonly number[];
}

/**
 * Keeps a strictly increasing subsequence of the greatest total weight; with equal weights the dropped set is
 * therefore the smallest whose removal leaves order.
 *
 * Ties: of all such choices, the one that drops earliest. Walking from the front, an item is dropped whenever
 * an optimal choice without it still exists; of two swapped neighbours the first is dropped.
 *
 * Quadratic in the number of items. Method: dynamic programming over suffixes (Schensted 1961 treats the
 * unweighted case as the longest increasing subsequence).
 */
export function findHeaviestIncrease(items: readonly WeightedItem[]): OrderSplit {
  const heaviestFrom = weighSuffixes(items);
  const kept: number[] = [];
  const dropped: number[] = [];
  let floor = Number.NEGATIVE_INFINITY;
  let stillToKeep = Math.max(0, ...heaviestFrom);
  items.forEach((item, position) => {
    const fits = item.value > floor && heaviestFrom[position] === stillToKeep;
    if (fits && !canStartLater(items, heaviestFrom, { after: position, floor, stillToKeep })) {
      kept.push(position);
      floor = item.value;
      stillToKeep -= item.weight;
    } else {
      dropped.push(position);
    }
  });
  return { kept, dropped };
}

/** For each position, the weight of the heaviest increasing subsequence that begins with its item. */
function weighSuffixes(items: readonly WeightedItem[]): number[] {
  const heaviestFrom = items.map((item) => item.weight);
  for (let position = items.length - 1; position >= 0; position -= 1) {
    const item = items[position];
    if (item === undefined) continue;
    let best = 0;
    for (let later = position + 1; later < items.length; later += 1) {
      if ((items[later]?.value ?? item.value) > item.value) best = Math.max(best, heaviestFrom[later] ?? 0);
    }
    heaviestFrom[position] = item.weight + best;
  }
  return heaviestFrom;
}

function canStartLater(
  items: readonly WeightedItem[],
  heaviestFrom: readonly number[],
  wanted: { readonly after: number; readonly floor: number; readonly stillToKeep: number },
): boolean {
  return items.some(
    (item, position) =>
      position > wanted.after && item.value > wanted.floor && heaviestFrom[position] === wanted.stillToKeep,
  );
}
