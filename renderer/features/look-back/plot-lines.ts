import { getEnds, type Series } from '../../../src-core/marking/look-back/build-series.ts';

/** Size of a small plot, in its own units. */
export const PLOT = { width: 160, height: 40, pad: 4 } as const;

/** With more lessons than these the newest alone has a dot. */
const MOST_DOTS = 40;

/** A place in a plot. */
export interface PlotPoint {
  readonly x: number;
  readonly y: number;
  readonly isInk: boolean;
}

/** What is drawn of a series. */
export interface PlotLines {
  /** Runs of lessons without a gap; ink as long as both ends of each step are. */
  readonly lines: readonly { readonly points: string; readonly isInk: boolean }[];
  readonly dots: readonly PlotPoint[];
  /** The means of the first and of the last lessons, as wide as those lessons. */
  readonly means: readonly { readonly from: number; readonly to: number; readonly y: number }[];
}

/**
 * A series as lines and dots, oldest at the left. A lesson without a value is a gap, and so is the step to a lesson in
 * `breaks`.
 *
 * @param top the value at the upper edge; nothing is at the lower one
 */
export function buildPlotLines(series: Series, top: number, breaks: readonly boolean[] = []): PlotLines {
  const { points } = series;
  const places = points.map(({ value, isInk }, at): PlotPoint | null =>
    value === null ? null : { x: findX(at, points.length), y: findY(value, top), isInk },
  );
  const there = places.filter((place) => place !== null);
  return {
    lines: joinLines(places, breaks),
    dots: points.length > MOST_DOTS ? there.slice(-1) : there,
    means: buildMeans(series, there, top),
  };
}

function findX(at: number, lessons: number): number {
  const { width, pad } = PLOT;
  return lessons === 1 ? width / 2 : round(pad + (at * (width - 2 * pad)) / (lessons - 1));
}

function findY(value: number, top: number): number {
  const { height, pad } = PLOT;
  return round(height - pad - (Math.min(value, top) / top) * (height - 2 * pad));
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}

function joinLines(
  places: readonly (PlotPoint | null)[],
  breaks: readonly boolean[],
): { points: string; isInk: boolean }[] {
  const lines: { points: string; isInk: boolean }[] = [];
  let isOpen = false;
  places.forEach((place, at) => {
    const before = places[at - 1];
    if (!place || !before || breaks[at]) {
      isOpen = false;
      return;
    }
    const isInk = place.isInk && before.isInk;
    const last = lines.at(-1);
    if (isOpen && last?.isInk === isInk) last.points += ` ${place.x},${place.y}`;
    else lines.push({ points: `${before.x},${before.y} ${place.x},${place.y}`, isInk });
    isOpen = true;
  });
  return lines;
}

function buildMeans({ early, late }: Series, there: readonly PlotPoint[], top: number): PlotLines['means'] {
  const ends = getEnds(there.length);
  const [firsts, lasts] = [there.slice(0, ends), there.slice(-ends)];
  if (early === null || late === null || ends === 0) return [];
  const build = (part: readonly PlotPoint[], mean: number) => ({
    from: (part.at(0)?.x ?? 0) - 3,
    to: (part.at(-1)?.x ?? 0) + 3,
    y: findY(mean, top),
  });
  return [build(firsts, early), build(lasts, late)];
}
