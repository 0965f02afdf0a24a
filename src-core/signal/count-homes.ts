import type { HomeMap } from './home-map.ts';

/** What makes a hill of the map somebody's home. Set on filmed groups (160 scenes each of seeds 1 and 3 of the unison bench). */
const HOME_RULE = {
  /** The way to a higher hill leads down to this share of its height at least. */
  saddleShare: 0.985,
  /** Its height, against the highest. */
  hillShare: 0.11,
  /** How far to the side the next higher one lies, against the frame's long side: arms and legs are not two people. */
  apartShare: 0.12,
} as const;

/**
 * How many performers a map shows: its hills, from the highest down, each ending where it meets a higher one
 * (persistence of peaks; H. Edelsbrunner and J. Harer, "Computational Topology", chapter VII, from memory). 0 for an
 * empty map.
 */
export function countHomes(map: HomeMap): number {
  const { width, height, amounts } = map;
  const highest = amounts.reduce((most, amount) => Math.max(most, amount), 0);
  const apart = HOME_RULE.apartShare * Math.max(width, height);
  const peaks = listPeaks(map)
    .filter((peak) => (amounts[peak] ?? 0) >= HOME_RULE.hillShare * highest)
    .sort((one, other) => (amounts[other] ?? 0) - (amounts[one] ?? 0));
  const homes: number[] = [];
  for (const peak of peaks) {
    if (homes.every((home) => Math.abs((home % width) - (peak % width)) >= apart)) homes.push(peak);
  }
  return homes.length;
}

/** Pixels of all peaks whose saddle is deep enough. */
function listPeaks({ width, height, amounts }: HomeMap): number[] {
  const getAmount = (at: number) => amounts[at] ?? 0;
  const order = [...amounts.keys()].filter((at) => getAmount(at) > 0);
  order.sort((one, other) => getAmount(other) - getAmount(one));
  const parents = new Int32Array(amounts.length).fill(-1);
  const peaks: number[] = [];
  const join = (saddle: number, one: number, other: number) => {
    const [lower, higher] = getAmount(one) < getAmount(other) ? [one, other] : [other, one];
    parents[lower] = higher;
    if (getAmount(saddle) <= HOME_RULE.saddleShare * getAmount(lower)) peaks.push(lower);
  };
  for (const at of order) {
    parents[at] = at;
    for (const near of listNeighbours(at, width, height)) {
      const [one, other] = [findPeak(parents, at), findPeak(parents, near)];
      if (other !== -1 && one !== other) join(at, one, other);
    }
  }
  return [...peaks, ...order.filter((at) => parents[at] === at)];
}

/** The highest pixel of the hill that a pixel belongs to; -1 where none has risen yet. Shortens the way for the next. */
function findPeak(parents: Int32Array, at: number): number {
  let peak = at;
  while (peak !== -1 && parents[peak] !== peak) peak = parents[peak] ?? -1;
  if (peak !== -1) parents[at] = peak;
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
