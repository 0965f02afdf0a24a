/** One lesson's value in a series. */
export interface SeriesPoint {
  /** A share from 0 to 1, or an amount of flags; null: the lesson has nothing to say about it. */
  readonly value: number | null;
  /** What it is a share of, such as points that could be earned or answers given; flags: clips and slots. */
  readonly of: number;
  /** False: something of it is the machine's word that nobody has confirmed. */
  readonly isInk: boolean;
}

/** A figure over a section's lessons, with the numbers to stand beside its plot. */
export interface Series {
  /** As many as the section has lessons, oldest first. */
  readonly points: readonly SeriesPoint[];
  /** Of the newest lesson that has one. */
  readonly last: number | null;
  /** Means of the first and of the last lessons, so many each as {@link getEnds} says; null with fewer than two. */
  readonly early: number | null;
  readonly late: number | null;
}

/** The most lessons that stand for the begin, and for the end, of a series. */
const MOST_AT_AN_END = 5;

/** How many lessons stand for either end of a series: five, or half of them where there are fewer than ten. */
export function getEnds(lessons: number): number {
  return Math.min(MOST_AT_AN_END, Math.floor(lessons / 2));
}

/** A series of these points. The means weigh every lesson alike, however many clips it had. */
export function buildSeries(points: readonly SeriesPoint[]): Series {
  const values = points.map(({ value }) => value).filter((value) => value !== null);
  const ends = getEnds(values.length);
  return {
    points,
    last: values.at(-1) ?? null,
    early: findMean(values.slice(0, ends)),
    late: findMean(ends === 0 ? [] : values.slice(-ends)),
  };
}

function findMean(values: readonly number[]): number | null {
  return values.length === 0 ? null : values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** The middle one of some values, or the mean of the middle two; null where there are none. */
export function findMedian(values: readonly number[]): number | null {
  const sorted = values.toSorted((one, other) => one - other);
  const [low, high] = [sorted[(sorted.length - 1) >> 1], sorted[sorted.length >> 1]];
  return low === undefined || high === undefined ? null : (low + high) / 2;
}
