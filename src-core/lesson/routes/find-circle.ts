import { addLegs, FORBIDDEN_COST, type LegCosts } from './leg-costs.ts';
import { searchOrder } from './search-order.ts';
import { turnList } from './turn-list.ts';

/** A round through all stations, or why there is none. */
export type Circle =
  | { readonly kind: 'found'; readonly order: readonly number[] }
  /** `none`: proved; `unknown`: not found, and too many stations to try all rounds. */
  | { readonly kind: 'none' | 'unknown' };

/** Up to so many stations every round is weighed. */
const EXACT_SIZE = 12;

/** `round`: closed, told from station 0. `way`: the leg back does not matter; begins at `first`, or anywhere (null). */
export type CircleKind = { readonly kind: 'round' } | { readonly kind: 'way'; readonly first: number | null };

/**
 * The shortest round or way through all stations without a forbidden leg; of equally short ones the given order. Up to
 * twelve stations the best is found for certain (M. Held and R. Karp, "A dynamic programming approach to sequencing
 * problems", 1962), beyond that by search, which the seed guides.
 */
export function findCircle(legs: LegCosts, circle: CircleKind, seed: number): Circle {
  const isClosed = circle.kind === 'round';
  const first = circle.kind === 'round' ? 0 : circle.first;
  const given = Array.from({ length: legs.size }, (_, at) => at);
  const getCost = (order: readonly number[]) =>
    addLegs(isClosed && order.length > 1 ? [...order, order[0] ?? 0] : order, legs) +
    (isClosed || first === null || order[0] === first ? 0 : FORBIDDEN_COST);
  const isExact = legs.size <= EXACT_SIZE;
  const order = isExact ? findShortest(legs, isClosed, first) : searchOrder(legs.size, getCost, seed).order;
  const cost = getCost(order);
  if (cost >= FORBIDDEN_COST) return { kind: isExact ? 'none' : 'unknown' };
  return { kind: 'found', order: getCost(given) <= cost + 1e-6 ? given : rotateToFirst(order, isClosed) };
}

/** A closed round is told from station 0. */
function rotateToFirst(order: readonly number[], isClosed: boolean): readonly number[] {
  return turnList(order, isClosed ? order.indexOf(0) : 0);
}

/** The cheapest ways so far, at `visited * size + last`: through a set of stations (as bits), ending at `last`. */
interface Ways {
  readonly costs: Float64Array;
  readonly before: Int8Array;
}

function findShortest(legs: LegCosts, isClosed: boolean, first: number | null): readonly number[] {
  const { size, cost } = legs;
  const all = (1 << size) - 1;
  const costs = new Float64Array((all + 1) * size).fill(Number.POSITIVE_INFINITY);
  const before = new Int8Array((all + 1) * size).fill(-1);
  const firsts = first === null ? Array.from({ length: size }, (_, at) => at) : [first];
  for (const station of firsts) costs[(1 << station) * size + station] = 0;
  for (let place = size; place < costs.length; place += 1) {
    if (costs[place] !== Number.POSITIVE_INFINITY) extend({ costs, before }, place, legs);
  }
  const getTotal = (last: number) =>
    (costs[all * size + last] ?? 0) + (isClosed && size > 1 ? cost(last, 0) : 0);
  let end = isClosed ? size - 1 : 0;
  for (let last = 0; last < size; last += 1) if (getTotal(last) < getTotal(end)) end = last;
  return walkBack(before, size, end);
}

/** Goes on from one way to every station that it has not been to. */
function extend({ costs, before }: Ways, place: number, { size, cost }: LegCosts): void {
  const [visited, last] = [Math.floor(place / size), place % size];
  for (let next = 0; next < size; next += 1) {
    if ((visited & (1 << next)) !== 0) continue;
    const further = (visited | (1 << next)) * size + next;
    const total = (costs[place] ?? 0) + cost(last, next);
    if (total >= (costs[further] ?? 0)) continue;
    costs[further] = total;
    before[further] = last;
  }
}

function walkBack(before: Int8Array, size: number, end: number): readonly number[] {
  const order: number[] = [];
  let [visited, last] = [(1 << size) - 1, end];
  while (last >= 0) {
    order.unshift(last);
    const previous = before[visited * size + last] ?? -1;
    visited &= ~(1 << last);
    last = previous;
  }
  return order;
}
