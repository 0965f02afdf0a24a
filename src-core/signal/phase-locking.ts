import { measureAgreement } from './order-parameter.ts';

/**
 * Phase-locking value of two signals: |mean over time of exp(i(a − b))|, 1 where they keep a constant distance in the
 * cycle, whatever it is, towards 0 where they do not heed each other (J.-P. Lachaux et al., "Measuring phase synchrony
 * in brain signals", Human Brain Mapping 8, 1999). Phases in radians, moment by moment, each counted by its weight (0 or
 * more) where weights are given; 0 without moments.
 */
export function measurePhaseLocking(
  one: readonly number[],
  other: readonly number[],
  weights?: readonly number[],
): number {
  return measureAgreement(
    one.map((phase, at) => phase - (other[at] ?? 0)),
    weights,
  ).length;
}
