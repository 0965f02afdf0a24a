/**
 * Moves positions apart so that neighbours in rising order are at least `gap` from each other, as little as can be in
 * the sum of squares (pooling of adjacent violators; Barlow et al., "Statistical Inference under Order Restrictions",
 * where bounds are kept by cutting the unbounded answer off at them). Positions stay half a gap within 0 to 100 as
 * long as there is room for all. The result is in the order given.
 */
export function spread(positions: readonly number[], gap: number): readonly number[] {
  const order = positions.map((_, at) => at).toSorted((a, b) => (positions[a] ?? 0) - (positions[b] ?? 0));
  const pools: { sum: number; size: number }[] = [];
  order.forEach((at, rank) => {
    pools.push({ sum: (positions[at] ?? 0) - rank * gap, size: 1 });
    for (let last = pools.at(-1), before = pools.at(-2); last && before; before = pools.at(-2)) {
      if (before.sum / before.size <= last.sum / last.size) break;
      pools.splice(-2, 2, { sum: before.sum + last.sum, size: before.size + last.size });
      last = pools.at(-1);
      if (!last) break;
    }
  });
  const low = gap / 2;
  const high = Math.max(low, 100 - gap / 2 - (positions.length - 1) * gap);
  const placed = pools.flatMap(({ sum, size }) =>
    Array.from({ length: size }, () => Math.max(low, Math.min(high, sum / size))),
  );
  const result = [...positions];
  order.forEach((at, rank) => {
    result[at] = (placed[rank] ?? 0) + rank * gap;
  });
  return result;
}
