import { addLegs, FORBIDDEN_COST, type LegCosts } from './leg-costs.ts';
import { listOrders, searchOrder } from './search-order.ts';
import { turnList } from './turn-list.ts';
import { buildWilliamsRows } from './williams.ts';

/** Rows of one Williams square, stations as numbers, in the order of the squads that take them. */
export type BalancedRows =
  | { readonly kind: 'found'; readonly rows: readonly (readonly number[])[] }
  /** `none`: proved; `unknown`: not found, and too many stations to try all orders. */
  | { readonly kind: 'none' | 'unknown' };

/** Up to so many stations every order is tried before it is said that there is none. */
const EXACT_SIZE = 7;

/**
 * Rows for so many squads out of one Williams square without a forbidden leg, with short walks. `starts` names the
 * station a squad must begin at, null where any will do. Which station stands for which number of the square is what
 * is searched; with nothing to choose by, stations stand in the order given. A seed beyond 1 turns the rows, so that
 * squads that may begin anywhere get others that are as short.
 */
export function findBalancedRows(
  legs: LegCosts,
  starts: readonly (number | null)[],
  seed: number,
): BalancedRows {
  if (isEveryLegWalked(legs, starts) && hasForbiddenLeg(legs)) return { kind: 'none' };
  const { square, mirror } = buildWilliamsRows(legs.size);
  const halves = mirror ? [square, mirror] : [square];
  const choose = (order: readonly number[]) =>
    halves
      .map((half) =>
        chooseRows(
          half.map((row) => row.map((at) => order[at] ?? 0)),
          starts,
          legs,
          seed,
        ),
      )
      .reduce((best, other) => (other.cost < best.cost ? other : best));
  const found = choose(searchOrder(legs.size, (order) => choose(order).cost, seed).order);
  if (found.cost < FORBIDDEN_COST) return { kind: 'found', rows: found.rows };
  if (legs.size > EXACT_SIZE) return { kind: 'unknown' };
  for (const order of listOrders(legs.size)) {
    const { rows, cost } = choose(order);
    if (cost < FORBIDDEN_COST) return { kind: 'found', rows };
  }
  return { kind: 'none' };
}

/** A whole square of even size walks every leg there is, so one forbidden leg rules it out. */
function isEveryLegWalked({ size }: LegCosts, starts: readonly unknown[]): boolean {
  return size % 2 === 0 && starts.length === size;
}

function hasForbiddenLeg({ size, isForbidden }: LegCosts): boolean {
  const all = [...Array(size).keys()];
  return all.some((from) => all.some((to) => from !== to && isForbidden(from, to)));
}

interface ChosenRows {
  readonly rows: readonly (readonly number[])[];
  readonly cost: number;
}

/**
 * Each start has one row; squads that may begin anywhere take the cheapest of what is left, in the given order at seed
 * 1. Further seeds hand these round; once round, they begin with others that are as cheap.
 */
function chooseRows(
  square: readonly (readonly number[])[],
  starts: readonly (number | null)[],
  legs: LegCosts,
  seed: number,
): ChosenRows {
  const taken = new Set(starts.filter((start) => start !== null));
  const count = starts.length - taken.size;
  const turned = turnList(square, Math.floor((seed - 1) / Math.max(1, count)));
  const weighed = turned.map((row) => ({ row, cost: addLegs(row, legs) }));
  const cheapest = weighed
    .filter(({ row }) => !taken.has(row[0] ?? -1))
    .sort((one, other) => one.cost - other.cost)
    .slice(0, count)
    .sort((one, other) => turned.indexOf(one.row) - turned.indexOf(other.row));
  const free = [...turnList(cheapest, seed - 1)];
  const chosen = starts.map((start) =>
    start === null ? free.shift() : weighed.find(({ row }) => row[0] === start),
  );
  const rows = chosen.flatMap((one) => (one ? [one.row] : []));
  return { rows, cost: chosen.reduce((sum, one) => sum + (one?.cost ?? 0), 0) };
}
