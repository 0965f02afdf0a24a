/** A count that was found and the true one; `found` null: none found. */
export interface CountPair {
  readonly found: number | null;
  readonly truth: number;
}

/** How far counts are from the truth, as published for repetition counting. */
export interface CountErrors {
  /** Mean of |found − true| / true over clips with a true count above 0; NaN without any. */
  readonly mae: number;
  /** Share of clips with |found − true| at most 1 (off-by-one accuracy). */
  readonly obo: number;
  /** Share of clips with the true count found. */
  readonly exact: number;
  /** Mean of |found − true|, clips without reps included. */
  readonly rawMae: number;
  /** Root of the mean of (found − true)². */
  readonly rmse: number;
}

/** The errors over some clips; none found counts as 0 reps. */
export function measureCounts(pairs: readonly CountPair[]): CountErrors {
  const errors = pairs.map(({ found, truth }) => ({ off: Math.abs((found ?? 0) - truth), truth }));
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  return {
    mae: mean(errors.filter(({ truth }) => truth > 0).map(({ off, truth }) => off / truth)),
    obo: mean(errors.map(({ off }) => (off <= 1 ? 1 : 0))),
    exact: mean(errors.map(({ off }) => (off === 0 ? 1 : 0))),
    rawMae: mean(errors.map(({ off }) => off)),
    rmse: Math.sqrt(mean(errors.map(({ off }) => off * off))),
  };
}
