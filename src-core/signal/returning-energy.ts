import { MARGIN_CYCLES, STEPS_PER_CYCLE } from './cycle-samples.ts';

/** Flow at even steps of the cycle, with the margin before and after; see `cycle-samples.ts`. */
interface SampledFlow {
  readonly cycles: number;
  readonly u: ArrayLike<number>;
  readonly v: ArrayLike<number>;
}

/** After how many cycles motion is looked for again: in the next, and in the second for who leaves out every other one. */
const RETURNS_AFTER = [1, 2];

/**
 * Energy at the rep rate: flow times the flow of a later cycle at the same step and cell, the mean over all pairs of
 * cycles that lie one or two apart. A step's cells, then the next step's. Of noise, and of whoever walks through once,
 * it is as often below 0 as above.
 */
export function averageReturning(runs: readonly SampledFlow[], cells: number): Float64Array {
  const length = STEPS_PER_CYCLE * cells;
  const energies = new Float64Array(length);
  let pairs = 0;
  for (const { cycles, u, v } of runs) {
    for (const after of RETURNS_AFTER) {
      const from = MARGIN_CYCLES * length;
      const count = Math.max(0, cycles - after);
      const on = after * length;
      pairs += count;
      for (let at = from; at < from + count * length; at++) {
        const to = at % length;
        const product = (u[at] ?? 0) * (u[at + on] ?? 0) + (v[at] ?? 0) * (v[at + on] ?? 0);
        energies[to] = (energies[to] ?? 0) + product;
      }
    }
  }
  return energies.map((energy) => energy / Math.max(1, pairs));
}
