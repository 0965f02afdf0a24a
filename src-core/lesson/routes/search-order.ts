import { type Random, seededRandom } from '../../platform/seeded-random.ts';

/** An order of the numbers from 0 up to some size, and what it costs. */
export interface FoundOrder {
  readonly order: readonly number[];
  readonly cost: number;
}

/** The most orders, beside the first, that the search sets out from. */
const RESTARTS = 24;

/** How many orders are weighed at most: some seconds' work at any size, for weighing one takes its size squared. */
const getBudget = (size: number) => Math.max(1000, Math.floor(2e7 / Math.max(1, size) ** 2));

/** Improvements smaller than this are rounding. */
const LEAST_GAIN = 1e-6;

/**
 * Looks for a cheap order by exchanging two and turning stretches round until nothing gets better, from the order
 * 0, 1, 2, … and from others drawn by the seed. Of equally cheap orders the one found first stays, so that the
 * given order is kept where none is better. The same seed gives the same order.
 */
export function searchOrder(
  size: number,
  getCost: (order: readonly number[]) => number,
  seed: number,
): FoundOrder {
  const random = seededRandom(seed);
  const given = Array.from({ length: size }, (_, at) => at);
  let left = getBudget(size);
  const weigh = (order: readonly number[]) => {
    left -= 1;
    // Whatever is weighed once the budget is spent changes nothing any more.
    return left < 0 ? Number.POSITIVE_INFINITY : getCost(order);
  };
  let best = improve(given, weigh);
  for (let restart = 0; restart < RESTARTS && best.cost > 0 && left > 0; restart += 1) {
    const found = improve(shuffle(given, random), weigh);
    if (found.cost < best.cost - LEAST_GAIN) best = found;
  }
  return best;
}

/** Every order of 0, 1, … up to a size, one after the other: few enough to try them all for small sizes alone. */
export function* listOrders(size: number): Generator<readonly number[]> {
  const order = Array.from({ length: size }, (_, at) => at);
  const turns = new Array<number>(size).fill(0);
  yield [...order];
  // Heap's algorithm (B. R. Heap, "Permutations by interchanges", 1963).
  for (let at = 1; at < size; ) {
    const turn = turns[at] ?? 0;
    if (turn < at) {
      exchange(order, at % 2 === 0 ? 0 : turn, at);
      yield [...order];
      turns[at] = turn + 1;
      at = 1;
    } else {
      turns[at] = 0;
      at += 1;
    }
  }
}

/** The items in an order drawn by `random` (R. Durstenfeld, "Algorithm 235: Random permutation", 1964). */
export function shuffle<Item>(items: readonly Item[], random: Random): Item[] {
  const drawn = [...items];
  for (let at = drawn.length - 1; at > 0; at -= 1) exchange(drawn, at, Math.floor(random() * (at + 1)));
  return drawn;
}

function improve(from: readonly number[], getCost: (order: readonly number[]) => number): FoundOrder {
  let best: FoundOrder = { order: from, cost: getCost(from) };
  for (let isBetter = true; isBetter; ) {
    isBetter = false;
    for (const order of listNeighbours(best.order)) {
      const cost = getCost(order);
      if (cost < best.cost - LEAST_GAIN) {
        best = { order, cost };
        isBetter = true;
        break;
      }
    }
  }
  return best;
}

function* listNeighbours(order: readonly number[]): Generator<number[]> {
  for (let from = 0; from < order.length; from += 1) {
    for (let to = from + 1; to < order.length; to += 1) {
      const exchanged = [...order];
      exchange(exchanged, from, to);
      yield exchanged;
      if (to > from + 1) {
        yield [...order.slice(0, from), ...order.slice(from, to + 1).toReversed(), ...order.slice(to + 1)];
      }
    }
  }
}

function exchange<Item>(items: Item[], one: number, other: number): void {
  [items[one], items[other]] = [items[other] as Item, items[one] as Item];
}
