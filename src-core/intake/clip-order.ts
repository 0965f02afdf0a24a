import type { EpochMs } from '../platform/units.ts';

/** A camera's running number: `IMG_0412.MOV` is 412 of the series `IMG_`. */
export interface SeriesNumber {
  readonly series: string;
  readonly value: number;
}

/** What orders a clip among those of its tablet. */
export interface OrderedBy {
  readonly id: string;
  readonly name: string;
  /** Null where the clip's date is missing or not to be believed. */
  readonly startMs: EpochMs | null;
  readonly number: SeriesNumber | null;
}

/** A clip's place among its tablet's clips. */
export interface ClipPlace {
  readonly id: string;
  /** `date`: by its own start. `number`: by its file number among its neighbours. `none`: no place, listed last. */
  readonly by: 'date' | 'number' | 'none';
}

/** A camera counts to 9999 and goes on with 0001 (DCF, JEITA CP-3461: file numbers 0001 to 9999). */
const LAST_NUMBER = 9999;

const collator = new Intl.Collator('en', { numeric: true });

/**
 * One tablet's clips in the order of filming. Dated clips go by their dates; a clip without a date keeps its
 * place by its number, right after the clip with the next lower number of its series, also where the counter
 * wrapped. Ties go by number, then by name. Clips with neither come last, without a place.
 */
export function orderClips(clips: readonly OrderedBy[]): readonly ClipPlace[] {
  const numbers = unwrapNumbers(clips);
  const byNumber = (a: OrderedBy, b: OrderedBy) =>
    (numbers.get(a.id) ?? 0) - (numbers.get(b.id) ?? 0) || collator.compare(a.name, b.name);
  const placed = clips
    .filter(({ startMs }) => startMs !== null)
    .sort((a, b) => (a.startMs ?? 0) - (b.startMs ?? 0) || byNumber(a, b));
  const undated = clips.filter(({ startMs }) => startMs === null).sort(byNumber);
  const lost: OrderedBy[] = [];
  const allUndated = placed.length === 0;
  for (const clip of undated) {
    const at = findPlace(clip, placed, numbers);
    if (at !== null) placed.splice(at, 0, clip);
    else if (allUndated && clip.number) placed.push(clip);
    else lost.push(clip);
  }
  return [
    ...placed.map(({ id, startMs }) => ({
      id,
      by: startMs === null ? ('number' as const) : ('date' as const),
    })),
    ...lost.map(({ id }) => ({ id, by: 'none' as const })),
  ];
}

/** Where in the placed clips a number belongs, or null where its series has no placed clip. */
function findPlace(
  clip: OrderedBy,
  placed: readonly OrderedBy[],
  numbers: ReadonlyMap<string, number>,
): number | null {
  const own = numbers.get(clip.id);
  if (own === undefined) return null;
  const sameSeries = placed.filter(({ number }) => number && number.series === clip.number?.series);
  if (sameSeries.length === 0) return null;
  const below = sameSeries.filter(({ id }) => (numbers.get(id) ?? 0) <= own);
  const nearest = below.sort((a, b) => (numbers.get(b.id) ?? 0) - (numbers.get(a.id) ?? 0))[0];
  if (nearest) return placed.indexOf(nearest) + 1;
  return Math.min(...sameSeries.map((other) => placed.indexOf(other)));
}

/** Each clip's number on a line without the wrap: within a series that runs over 9999, low numbers come after. */
function unwrapNumbers(clips: readonly OrderedBy[]): ReadonlyMap<string, number> {
  const bySeries = new Map<string, OrderedBy[]>();
  for (const clip of clips) {
    if (clip.number) bySeries.set(clip.number.series, [...(bySeries.get(clip.number.series) ?? []), clip]);
  }
  const line = new Map<string, number>();
  for (const series of bySeries.values()) {
    const values = series.map(({ number }) => number?.value ?? 0).sort((a, b) => a - b);
    const first = getFirstAfterWidestGap(values);
    for (const { id, number } of series) {
      const value = number?.value ?? 0;
      line.set(id, value < first ? value + LAST_NUMBER : value);
    }
  }
  return line;
}

/** On the circle of numbers a tablet's run begins after the widest gap; ties keep the natural beginning. */
function getFirstAfterWidestGap(sorted: readonly number[]): number {
  const lowest = sorted[0] ?? 0;
  let widest = lowest + LAST_NUMBER - (sorted.at(-1) ?? 0);
  let first = lowest;
  sorted.forEach((value, index) => {
    const gap = index === 0 ? 0 : value - (sorted[index - 1] ?? value);
    if (gap > widest) {
      widest = gap;
      first = value;
    }
  });
  return first;
}
