import { fail, type Outcome, succeed } from '../../platform/outcome.ts';
import type { SquadCode, StationCode } from '../plan.ts';
import { type BalancedRows, findBalancedRows } from './balanced-rows.ts';
import { describeRoutes, type RoutesNature } from './describe-routes.ts';
import { findCircle } from './find-circle.ts';
import { addLegs, buildLegCosts, type Distance, type LegCosts } from './leg-costs.ts';
import type { Leg, RouteProblem } from './route-problem.ts';
import { turnList } from './turn-list.ts';

/** What routes are to be made of, and what they must keep to. */
export interface RouteOrder {
  /** Every route visits each of them once; those that stay out today are not among them. */
  readonly stations: readonly StationCode[];
  /** `start`: where the squad must begin; null: anywhere. */
  readonly squads: readonly { readonly code: SquadCode; readonly start: StationCode | null }[];
  /** `cyclic`: one round for all, from different starts. `balanced`: rows of a Williams design. */
  readonly design: 'cyclic' | 'balanced';
  /** Legs that nobody may walk. */
  readonly forbidden: readonly Leg[];
  readonly distances: readonly Distance[];
  /** From 1 on, one way after another of those that are as short; also guides the search where all are too many. */
  readonly seed: number;
}

/** A squad's route as suggested. */
export interface SuggestedRoute {
  readonly squad: SquadCode;
  readonly route: readonly StationCode[];
  /** The whole walk, with the mean for what was not given; null where no distance is known. */
  readonly metres: number | null;
}

/** Routes for all squads, a proposal until the teacher takes it. */
export interface RouteSuggestion {
  readonly routes: readonly SuggestedRoute[];
  readonly nature: RoutesNature;
  /** The longest leg that anybody walks, of those whose distance was given; null where none was. */
  readonly longestLeg: { readonly leg: Leg; readonly metres: number } | null;
}

/**
 * Routes on which no two squads ever share a station in a slot, with short walks where distances are given. Squads
 * of a cyclic design start as far apart as they can, so that a slow squad has nobody at its heels. Fails with the
 * wish that is to blame. More squads than stations are refused: stations are doubled by giving each twin its own
 * code and card, never by sharing one card.
 */
export function suggestRoutes(order: RouteOrder): Outcome<RouteSuggestion, RouteProblem> {
  const slips = checkOrder(order);
  if (slips.length > 0) return fail(...slips);
  const legs = buildLegCosts(order.stations, order.distances, order.forbidden);
  const found = order.design === 'cyclic' ? findCyclicRows(order, legs) : findRows(order, legs);
  if (found.kind !== 'found') return fail(blame(order, found.kind));
  return succeed(describe(order, found.rows));
}

function checkOrder({ stations, squads }: RouteOrder): readonly RouteProblem[] {
  if (squads.length === 0) return [{ code: 'routes-without-squads' }];
  if (stations.length === 0) return [{ code: 'routes-without-stations' }];
  if (squads.length > stations.length) {
    return [{ code: 'routes-too-many-squads', squads: squads.length, stations: stations.length }];
  }
  return squads.flatMap(({ code, start }, at): RouteProblem[] => {
    if (start === null) return [];
    if (!stations.includes(start)) return [{ code: 'routes-start-unknown', squad: code, station: start }];
    const other = squads.slice(0, at).find((earlier) => earlier.start === start);
    return other ? [{ code: 'routes-start-twice', station: start, squads: [other.code, code] }] : [];
  });
}

function findRows(order: RouteOrder, legs: LegCosts): BalancedRows {
  return findBalancedRows(legs, getStarts(order), order.seed);
}

function getStarts({ stations, squads }: RouteOrder): (number | null)[] {
  return squads.map(({ start }) => (start === null ? null : stations.indexOf(start)));
}

function findCyclicRows(order: RouteOrder, legs: LegCosts): BalancedRows {
  const starts = getStarts(order);
  const [first = null] = starts;
  const isAlone = starts.length === 1;
  const circle = findCircle(legs, isAlone ? { kind: 'way', first } : { kind: 'round' }, order.seed);
  if (circle.kind !== 'found') return { kind: circle.kind };
  const round = circle.order;
  const begins = isAlone ? [round[0] ?? 0] : spreadStarts(round, starts);
  const free = begins.filter((_, squad) => starts[squad] === null);
  const turned = turnList(free, order.seed - 1).values();
  const spread = begins.map((begin, squad) =>
    starts[squad] === null ? (turned.next().value ?? begin) : begin,
  );
  const there = spread.map((begin) => turnList(round, round.indexOf(begin)));
  // Once every squad has begun everywhere, the round is walked the other way, where that is no longer.
  const laps = Math.floor((order.seed - 1) / Math.max(1, free.length));
  const [alone] = there;
  const back =
    isAlone && first === null && alone
      ? [alone.toReversed()]
      : there.map(([begin, ...rest]) => reverse(begin, rest));
  const isBack = laps % 2 !== 0 && addRows(back, legs) <= addRows(there, legs) + 1e-6;
  return { kind: 'found', rows: isBack ? back : there };
}

function reverse(begin: number | undefined, rest: readonly number[]): readonly number[] {
  return [...(begin === undefined ? [] : [begin]), ...rest.toReversed()];
}

function addRows(rows: readonly (readonly number[])[], legs: LegCosts): number {
  return rows.reduce((sum, row) => sum + addLegs(row, legs), 0);
}

/** Where each squad begins: fixed starts first, the others evenly over the round, next free station on. */
function spreadStarts(round: readonly number[], starts: readonly (number | null)[]): readonly number[] {
  const taken = new Set(starts.filter((start) => start !== null));
  return starts.map((start, squad) => {
    if (start !== null) return start;
    let at = Math.floor((squad * round.length) / starts.length);
    while (taken.has(round[at] ?? 0)) at = (at + 1) % round.length;
    taken.add(round[at] ?? 0);
    return round[at] ?? 0;
  });
}

/** Legs that, each by itself, cannot be done without, as long as the others stay forbidden. */
function blame(order: RouteOrder, kind: 'none' | 'unknown'): RouteProblem {
  const { design, stations } = order;
  const there = order.forbidden.filter((leg) => leg.every((station) => stations.includes(station)));
  if (kind === 'unknown') return { code: 'routes-not-found', design, legs: there };
  let legs: readonly Leg[] = there;
  for (const leg of there) {
    const others = legs.filter((one) => one !== leg);
    const costs = buildLegCosts(stations, [], others);
    const found = design === 'cyclic' ? findCyclicRows(order, costs) : findRows(order, costs);
    if (found.kind === 'none') legs = others;
  }
  return { code: 'routes-legs-needed', design, legs };
}

function describe(order: RouteOrder, rows: readonly (readonly number[])[]): RouteSuggestion {
  const { stations, squads, distances } = order;
  const name = (at: number) => stations[at] ?? '';
  const known = buildLegCosts(stations, distances, []);
  const isMeasured = distances.some(({ between }) => between.every((station) => stations.includes(station)));
  const routes = squads.map(({ code }, at): SuggestedRoute => {
    const row = rows[at] ?? [];
    return { squad: code, route: row.map(name), metres: isMeasured ? addLegs(row, known) : null };
  });
  const walked = rows.flatMap((row) =>
    row.slice(1).flatMap((to, at) => {
      const from = row[at] ?? 0;
      if (!known.isKnown(from, to)) return [];
      return [{ leg: [name(from), name(to)] as const, metres: known.metres(from, to) }];
    }),
  );
  const longest = walked.toSorted((one, other) => other.metres - one.metres)[0] ?? null;
  return {
    routes,
    nature: describeRoutes(routes.map(({ route }) => route)),
    longestLeg: longest,
  };
}
