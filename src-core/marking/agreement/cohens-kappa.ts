/** How much a disagreement counts: any the same, by its distance, or by the distance squared. */
export type KappaWeights = 'none' | 'linear' | 'quadratic';

/** How often each pair of ratings came: rows are the first rater's categories, columns the second's, in one order. */
export type RatingTable = readonly (readonly number[])[];

/** Pairs of ratings as a table over the given categories. Throws where a rating is none of them: that is a bug. */
export function tabulate<Rating>(
  pairs: readonly (readonly [first: Rating, second: Rating])[],
  categories: readonly Rating[],
): RatingTable {
  const table = categories.map(() => categories.map(() => 0));
  for (const [first, second] of pairs) {
    const row = table[categories.indexOf(first)];
    const column = categories.indexOf(second);
    if (row?.[column] === undefined) throw new Error(`no such category: ${String(first)}, ${String(second)}`);
    row[column] += 1;
  }
  return table;
}

/** Share of pairs that agree, 0 to 1; null where there are no pairs. */
export function findShareAgreed(table: RatingTable): number | null {
  const total = table.flat().reduce(add, 0);
  return total === 0 ? null : table.reduce((sum, row, at) => sum + (row[at] ?? 0), 0) / total;
}

/**
 * Cohen's kappa, weighted where asked: agreement beyond what the raters' own habits would give by chance, 1 at most.
 * Null, which is "not defined", where chance alone would agree in everything (all ratings in one category: 0 / 0) or
 * there is nothing to compare. Cohen, "A coefficient of agreement for nominal scales" (1960), and "Weighted kappa"
 * (1968); linear weights 1 − |i − j| / (r − 1), quadratic ones with both squared.
 */
export function findKappa(table: RatingTable, weights: KappaWeights = 'none'): number | null {
  const worst = Math.max(1, table.length - 1);
  return findWeightedKappa(table, (row, column) => {
    const distance = Math.abs(row - column);
    if (weights === 'none') return distance === 0 ? 0 : 1;
    return weights === 'linear' ? distance / worst : (distance / worst) ** 2;
  });
}

/** The same with a cost of one's own for each pair of categories, 0 where they agree (Cohen 1968). */
export function findWeightedKappa(
  table: RatingTable,
  getCost: (row: number, column: number) => number,
): number | null {
  const total = table.flat().reduce(add, 0);
  if (total === 0) return null;
  const rowSums = table.map((row) => row.reduce(add, 0));
  const columnSums = table.map((_, column) => table.reduce((sum, row) => sum + (row[column] ?? 0), 0));
  let observed = 0;
  let expected = 0;
  table.forEach((row, at) => {
    row.forEach((count, column) => {
      const cost = getCost(at, column);
      observed += cost * count;
      expected += (cost * (rowSums[at] ?? 0) * (columnSums[column] ?? 0)) / total;
    });
  });
  return expected === 0 ? null : 1 - observed / expected;
}

function add(sum: number, value: number): number {
  return sum + value;
}
