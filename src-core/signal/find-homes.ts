import type { HomeMap } from './home-map.ts';

/** What makes a hill of the map somebody's home. Set on filmed groups (the unison bench's seeds 1, 3, 5 and 6). */
const HOME_RULE = {
  /** The way to a higher hill leads down to this share of its height at least. */
  saddleShare: 0.985,
  /** Its height, against the highest. */
  hillShare: 0.11,
  /**
   * How far up or down from the highest, against the frame's long side: beyond it, scenery moves because the camera
   * does, for a tablet at waist height sees the middles of all who stand on one floor at about one level.
   */
  levelShare: 0.25,
  /** How far from the next one, against the frame's long side: arms and legs are not two people. */
  apartShare: 0.12,
} as const;

/** The homes of a map. */
export interface Homes {
  /** Pixel of each one's highest point, the most prominent first. */
  readonly peaks: readonly number[];
  /** Which home each pixel of the map belongs to, from 0; -1 in an empty map. */
  readonly owners: Int8Array;
}

/**
 * Where the performers of a map are at home: its hills, each ending where it meets a higher one (persistence of peaks;
 * H. Edelsbrunner and J. Harer, "Computational Topology", chapter VII, from memory), the most prominent first. What is
 * no home of its own belongs to the nearest.
 *
 * Two homes may lie one above the other: performers in two rows, or one whose arms and legs move by themselves; how
 * they keep time tells which.
 */
export function findHomes(map: HomeMap): Homes {
  const hills = climbHills(map);
  const homes = chooseHomes(hills, map);
  const findNearest = (pixel: number) => {
    const distances = homes.map((home) => Math.hypot(...findOffset(home, pixel, map)));
    return distances.indexOf(Math.min(...distances));
  };
  const owners = new Map(hills.peaks.map(({ at }) => [at, findNearest(at)]));
  return {
    peaks: homes,
    owners: Int8Array.from(hills.peakOf, (peak, pixel) => owners.get(peak) ?? findNearest(pixel)),
  };
}

/** How far two homes must lie apart to the side to be two people for certain, in pixels. */
export function getApart({ width, height }: HomeMap): number {
  return HOME_RULE.apartShare * Math.max(width, height);
}

function findOffset(from: number, to: number, { width }: HomeMap): [right: number, down: number] {
  return [(to % width) - (from % width), Math.floor(to / width) - Math.floor(from / width)];
}

/** Pixels of the homes' peaks. */
function chooseHomes({ peaks }: Hills, map: HomeMap): number[] {
  const { saddleShare, hillShare, levelShare } = HOME_RULE;
  const getHeight = (at: number) => map.amounts[at] ?? 0;
  const highest = peaks.reduce((best, { at }) => (getHeight(at) > getHeight(best) ? at : best), 0);
  const isHome = ({ at, saddle }: Peak) =>
    saddle <= saddleShare * getHeight(at) &&
    getHeight(at) >= hillShare * getHeight(highest) &&
    Math.abs(findOffset(highest, at, map)[1]) <= levelShare * Math.max(map.width, map.height);
  const isApart = (one: number, other: number) => Math.hypot(...findOffset(one, other, map)) >= getApart(map);
  const rise = ({ at, saddle }: Peak) => getHeight(at) - saddle;
  const homes: number[] = [];
  for (const { at } of peaks.filter(isHome).sort((one, other) => rise(other) - rise(one))) {
    if (homes.every((home) => isApart(home, at))) homes.push(at);
  }
  return homes;
}

interface Peak {
  /** Its pixel. */
  readonly at: number;
  /** Amount where the way to a higher hill is lowest; 0 where none leads to one. */
  readonly saddle: number;
}

interface Hills {
  readonly peaks: readonly Peak[];
  /** The peak that the steepest way from each pixel leads up to; -1 where nothing is. */
  readonly peakOf: Int32Array;
}

/** All hills of a map, however low, found from the highest pixel down. */
function climbHills({ width, height, amounts }: HomeMap): Hills {
  const getAmount = (at: number) => amounts[at] ?? 0;
  const order = [...amounts.keys()].filter((at) => getAmount(at) > 0);
  order.sort((one, other) => getAmount(other) - getAmount(one));
  const parents = new Int32Array(amounts.length).fill(-1);
  const peakOf = new Int32Array(amounts.length).fill(-1);
  const saddles = new Map<number, number>();
  for (const at of order) {
    const above = listNeighbours(at, width, height).filter((near) => parents[near] !== -1);
    const [steepest] = above.toSorted((one, other) => getAmount(other) - getAmount(one));
    parents[at] = at;
    peakOf[at] = steepest === undefined ? at : (peakOf[steepest] ?? at);
    if (steepest === undefined) saddles.set(at, 0);
    for (const near of above) {
      const lower = joinHills(parents, [at, near], getAmount);
      if (lower !== at && lower !== null) saddles.set(lower, getAmount(at));
    }
  }
  return { peaks: [...saddles].map(([at, saddle]) => ({ at, saddle })), peakOf };
}

/** Makes one hill of those that two pixels lie on: the peak that is no longer the highest, null where it was one already. */
function joinHills(
  parents: Int32Array,
  [at, near]: readonly [number, number],
  getAmount: (at: number) => number,
): number | null {
  const [one, other] = [findPeak(parents, at), findPeak(parents, near)];
  if (one === other) return null;
  const [lower, higher] = getAmount(one) <= getAmount(other) ? [one, other] : [other, one];
  parents[lower] = higher;
  return lower;
}

/** The highest pixel of the hill that a pixel belongs to by now. Shortens the way for the next. */
function findPeak(parents: Int32Array, at: number): number {
  let peak = at;
  while (parents[peak] !== peak) peak = parents[peak] ?? at;
  parents[at] = peak;
  return peak;
}

function listNeighbours(at: number, width: number, height: number): number[] {
  const column = at % width;
  const row = Math.floor(at / width);
  return [-1, 0, 1].flatMap((down) =>
    [-1, 0, 1].flatMap((right) => {
      const [x, y] = [column + right, row + down];
      const isOther = right !== 0 || down !== 0;
      return isOther && x >= 0 && y >= 0 && x < width && y < height ? [y * width + x] : [];
    }),
  );
}
