/** The strip of the picture that one performer keeps to. */
export interface Lane {
  /** Left and right edge in pixels of the small frame. */
  readonly from: number;
  readonly to: number;
  /** Middle of its motion in pixels of the small frame. */
  readonly middle: number;
}

/** What makes a valley of the profile the border between two performers. */
export interface LaneRule {
  /** A valley is at most this share of the lower of the two hills beside it. */
  readonly valleyShare: number;
  /** A hill is at least this share of the highest one. */
  readonly hillShare: number;
}

/** Set on rendered groups of two to five; see the bench of unison. */
const LANE_RULE: LaneRule = { valleyShare: 0.92, hillShare: 0.15 };

/** Share of the profile's highest value below which nobody moves. */
const EDGE_SHARE = 0.06;

/** What an uneven width costs against a border through the middle of a hill, where the number of lanes is given. */
const UNEVEN_COST = 1.5;

/**
 * Cuts a profile of motion from left to right into lanes, one value a pixel. Where `count` is null the number of lanes
 * is an estimate: one for each hill, borders in the valleys. Where it is given, that many lanes are cut along the
 * deepest valleys that leave them of about the same width. No lanes in a profile of zeros.
 */
export function splitLanes(profile: Float64Array, count: number | null, rule: LaneRule = LANE_RULE): Lane[] {
  const highest = profile.reduce((most, value) => Math.max(most, value), 0);
  if (highest <= 0) return [];
  const first = profile.findIndex((value) => value >= EDGE_SHARE * highest);
  const last = profile.findLastIndex((value) => value >= EDGE_SHARE * highest) + 1;
  const borders =
    count === null
      ? findValleys(profile, highest, rule)
      : placeBorders(profile.subarray(first, last), count).map((border) => border + first);
  const edges = [first, ...borders, last];
  return edges.slice(1).map((to, lane) => {
    const from = edges[lane] ?? 0;
    return { from, to, middle: findMiddle(profile, from, to) };
  });
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

/** Where valleys lie between hills that count, from left to right. */
function findValleys(profile: Float64Array, highest: number, rule: LaneRule): number[] {
  const borders: number[] = [];
  let hill = 0;
  let valley = Number.POSITIVE_INFINITY;
  let valleyAt = 0;
  for (const [at, value] of profile.entries()) {
    if (value < valley) {
      valley = value;
      valleyAt = at;
    }
    const isHill = value >= rule.hillShare * highest;
    if (isHill && valley <= rule.valleyShare * Math.min(hill, value)) {
      borders.push(valleyAt);
      hill = value;
      valley = value;
    } else if (value >= hill) {
      hill = value;
      valley = value;
    }
    if (!isHill && hill < rule.hillShare * highest) hill = 0;
  }
  return borders;
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
