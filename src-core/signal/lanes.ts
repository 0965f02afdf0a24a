/** The strip of the picture that one performer keeps to. */
export interface Lane {
  /** Left and right edge in pixels of the small frame. */
  readonly from: number;
  readonly to: number;
  /** Middle of its motion in pixels of the small frame. */
  readonly middle: number;
}

/** Share of the profile's highest value below which nobody moves. */
const EDGE_SHARE = 0.06;

/** What an uneven width costs against a border through the middle of a hill. Set like `HOME_RULE` of `count-homes.ts`. */
const UNEVEN_COST = 1.5;

/**
 * Cuts a profile of motion from left to right into `count` lanes, one value a pixel: along the deepest valleys that leave
 * them of about the same width. No lanes in a profile of zeros, or where there are none to cut.
 */
export function splitLanes(profile: Float64Array, count: number): Lane[] {
  const span = findSpan(profile);
  if (span === null || count < 1) return [];
  const [first, last] = span;
  const borders = placeBorders(profile.subarray(first, last), count).map((border) => border + first);
  const edges = [first, ...borders, last];
  return edges.slice(1).map((to, lane) => {
    const from = edges[lane] ?? 0;
    return { from, to, middle: findMiddle(profile, from, to) };
  });
}

/**
 * A lane round each of the given places, from left to right: neighbours border on each other at the lowest point between
 * them, away from both. No lanes in a profile of zeros.
 *
 * @param places in pixels of the small frame, in any order
 */
export function splitLanesAt(profile: Float64Array, places: readonly number[]): Lane[] {
  const span = findSpan(profile);
  if (span === null) return [];
  const middles = places.toSorted((one, other) => one - other);
  const borders = middles.slice(1).map((right, at) => findValley(profile, middles[at] ?? 0, right));
  const first = Math.min(span[0], Math.floor(middles[0] ?? 0));
  const last = Math.max(span[1], Math.ceil(middles.at(-1) ?? 0));
  return middles.map((middle, lane) => ({
    from: borders[lane - 1] ?? first,
    to: borders[lane] ?? last,
    middle,
  }));
}

/** Share of the way between two places within which their border is not looked for, at either end. */
const OWN_SHARE = 0.25;

/** Where a profile is lowest between two places; the nearer to their middle, where it is as low in several. */
function findValley(profile: Float64Array, left: number, right: number): number {
  const between = (left + right) / 2;
  const reach = (0.5 - OWN_SHARE) * (right - left);
  let border = Math.round(between);
  const isBetter = (at: number) =>
    (profile[at] ?? 0) < (profile[border] ?? 0) ||
    (profile[at] === profile[border] && Math.abs(at - between) < Math.abs(border - between));
  for (let at = Math.ceil(between - reach); at <= between + reach; at++) if (isBetter(at)) border = at;
  return border;
}

/** From where to where somebody moves; null where nobody does. */
function findSpan(profile: Float64Array): readonly [first: number, last: number] | null {
  const highest = profile.reduce((most, value) => Math.max(most, value), 0);
  if (highest <= 0) return null;
  const first = profile.findIndex((value) => value >= EDGE_SHARE * highest);
  return [first, profile.findLastIndex((value) => value >= EDGE_SHARE * highest) + 1];
}

function findMiddle(profile: Float64Array, from: number, to: number): number {
  let sum = 0;
  let total = 0;
  for (let at = from; at < to; at++) {
    sum += (profile[at] ?? 0) * (at + 0.5);
    total += profile[at] ?? 0;
  }
  return total === 0 ? (from + to) / 2 : sum / total;
}

/** Costs of the best ways to cut the first pixels of a profile in so many lanes, and where the last lane then begins. */
interface Cuts {
  readonly costs: Float64Array;
  readonly from: Int32Array;
}

/** The cheapest way to cut a profile in `count` parts, by dynamic programming from left to right. */
function placeBorders(profile: Float64Array, count: number): number[] {
  const { length } = profile;
  const width = length / count;
  const part = (from: number, to: number) => UNEVEN_COST * ((to - from) / width - 1) ** 2;
  const one = Float64Array.from({ length: length + 1 }, (_, to) => (to === 0 ? Infinity : part(0, to)));
  const cuts: Cuts[] = [{ costs: one, from: new Int32Array(length + 1) }];
  while (cuts.length < Math.min(count, length)) cuts.push(addLane(cuts.at(-1)?.costs ?? one, profile, part));
  const borders: number[] = [];
  let at = length;
  for (const { from } of cuts.slice(1).reverse()) {
    at = from[at] ?? 0;
    borders.unshift(at);
  }
  return borders;
}

function addLane(
  before: Float64Array,
  profile: Float64Array,
  part: (from: number, to: number) => number,
): Cuts {
  const mean = profile.reduce((sum, value) => sum + value, 0) / profile.length;
  const costs = new Float64Array(before.length).fill(Infinity);
  const from = new Int32Array(before.length);
  for (let to = 1; to < costs.length; to++) {
    for (let at = 1; at < to; at++) {
      const cost = (before[at] ?? Infinity) + (profile[at] ?? 0) / mean + part(at, to);
      if (cost >= (costs[to] ?? Infinity)) continue;
      costs[to] = cost;
      from[to] = at;
    }
  }
  return { costs, from };
}
