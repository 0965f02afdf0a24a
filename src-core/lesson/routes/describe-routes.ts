import type { StationCode } from '../plan.ts';

/** What routes are, taken together; whoever made them. */
export interface RoutesNature {
  /** No two routes are at one station in one slot. */
  readonly isFreeOfMeetings: boolean;
  /** As many routes as stations, and every station once in each route and once in each slot. */
  readonly isLatin: boolean;
  /** Every station follows every other equally often, once at least. */
  readonly isBalanced: boolean;
  /** Legs as ordered pairs of different stations: how many occur, how many there are, least and most often walked. */
  readonly legs: {
    readonly distinct: number;
    readonly possible: number;
    readonly least: number;
    readonly most: number;
  };
}

/**
 * Says what a set of routes is: without meetings, a Latin square, balanced for carry-over. The three are different
 * things: a Latin square may leave legs out that another square walks (R package crossdes, help page `williams`).
 */
export function describeRoutes(routes: readonly (readonly StationCode[])[]): RoutesNature {
  const stations = [...new Set(routes.flat())];
  const counts = countLegs(routes);
  const possible = stations.length * (stations.length - 1);
  const least = counts.size < possible ? 0 : Math.min(...counts.values());
  const most = Math.max(0, ...counts.values());
  const isFreeOfMeetings = Array.from({ length: Math.max(0, ...routes.map(({ length }) => length)) }).every(
    (_, slot) => {
      const there = routes.flatMap((route) => route[slot] ?? []);
      return new Set(there).size === there.length;
    },
  );
  const areWhole = routes.every(
    (route) => route.length === stations.length && new Set(route).size === stations.length,
  );
  return {
    isFreeOfMeetings,
    isLatin: isFreeOfMeetings && areWhole && routes.length === stations.length,
    isBalanced: least > 0 && least === most,
    legs: { distinct: counts.size, possible, least, most },
  };
}

/** How often each leg is walked, by `from to`. */
function countLegs(routes: readonly (readonly StationCode[])[]): Map<string, number> {
  const counts = new Map<string, number>();
  for (const route of routes) {
    route.slice(1).forEach((to, at) => {
      const leg = `${route[at]} ${to}`;
      if (route[at] !== to) counts.set(leg, (counts.get(leg) ?? 0) + 1);
    });
  }
  return counts;
}
