import type { StationCode } from '../plan.ts';
import type { Leg } from './route-problem.ts';

/** A distance between two places, the same both ways. */
export interface Distance {
  readonly between: readonly [StationCode, StationCode];
  readonly metres: number;
}

/** What walking from station to station costs, stations by their place in a list. */
export interface LegCosts {
  readonly size: number;
  /** Metres; a distance that was not given counts as the mean of those that were, or nothing where none was. */
  readonly metres: (from: number, to: number) => number;
  /** Whether the distance was given. */
  readonly isKnown: (from: number, to: number) => boolean;
  readonly isForbidden: (from: number, to: number) => boolean;
  /** One figure to make small: metres, and more than any walk for each forbidden leg. */
  readonly cost: (from: number, to: number) => number;
}

/** What one forbidden leg weighs: more than forty legs of the longest distance a plan can hold, forty times over. */
export const FORBIDDEN_COST = 1e7;

/** Looks all legs between some stations up beforehand. */
export function buildLegCosts(
  stations: readonly StationCode[],
  distances: readonly Distance[],
  forbidden: readonly Leg[],
): LegCosts {
  const size = stations.length;
  const known = new Map<string, number>(
    distances.flatMap(({ between: [one, other], metres }) => [
      [`${one} ${other}`, metres] as const,
      [`${other} ${one}`, metres] as const,
    ]),
  );
  const mean = distances.reduce((sum, { metres }) => sum + metres, 0) / Math.max(1, distances.length);
  const shut = new Set(forbidden.map((leg) => leg.join(' ')));
  const legs = stations.map((from) =>
    stations.map((to) => {
      const leg = `${from} ${to}`;
      return { metres: known.get(leg) ?? mean, isKnown: known.has(leg), isForbidden: shut.has(leg) };
    }),
  );
  const metres = (from: number, to: number) => legs[from]?.[to]?.metres ?? 0;
  const isKnown = (from: number, to: number) => legs[from]?.[to]?.isKnown === true;
  const isForbidden = (from: number, to: number) => legs[from]?.[to]?.isForbidden === true;
  const cost = (from: number, to: number) => metres(from, to) + (isForbidden(from, to) ? FORBIDDEN_COST : 0);
  return { size, metres, isKnown, isForbidden, cost };
}

/** The cost of walking some stations in this order. */
export function addLegs(order: readonly number[], { cost }: Pick<LegCosts, 'cost'>): number {
  return order.slice(1).reduce((sum, to, at) => sum + cost(order[at] ?? 0, to), 0);
}
