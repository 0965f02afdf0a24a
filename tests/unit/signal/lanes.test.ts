import { describe, expect, test } from 'vitest';
import { splitLanes } from '../../../src-core/signal/lanes.ts';

/** A profile of bell-shaped hills: [middle, height, width] each. */
function drawHills(length: number, hills: readonly (readonly [number, number, number])[]): Float64Array {
  return Float64Array.from({ length }, (_, at) =>
    hills.reduce(
      (sum, [middle, height, width]) =>
        sum + height * Math.exp(-((at + 0.5 - middle) ** 2) / (2 * width ** 2)),
      0,
    ),
  );
}

describe('lanes', () => {
  test('are one for each hill of the profile, with borders in the valleys', () => {
    const lanes = splitLanes(
      drawHills(80, [
        [12, 1, 4],
        [40, 0.6, 4],
        [66, 0.9, 4],
      ]),
      null,
    );
    expect(lanes.map(({ middle }) => Math.round(middle))).toEqual([12, 40, 66]);
    expect(lanes[0]?.to).toBe(lanes[1]?.from);
    expect(Math.abs((lanes[1]?.to ?? 0) - 53)).toBeLessThanOrEqual(2);
  });

  test('are not made of a low bump beside a hill, nor of a dent in one', () => {
    expect(
      splitLanes(
        drawHills(80, [
          [20, 1, 4],
          [60, 0.05, 4],
        ]),
        null,
      ),
    ).toHaveLength(1);
    const dented = drawHills(80, [[40, 1, 6]]).map((value, at) => (at === 40 ? value * 0.96 : value));
    expect(splitLanes(dented, null)).toHaveLength(1);
  });

  test('are as many as the teacher says, also where two hills have grown together', () => {
    const grown = drawHills(80, [
      [10, 1, 4],
      [33, 1, 5.5],
      [46, 1, 5.5],
      [70, 1, 4],
    ]);
    expect(splitLanes(grown, null)).toHaveLength(3);
    expect(splitLanes(grown, 4).map(({ middle }) => Math.round(middle / 4))).toEqual([3, 8, 12, 17]);
    expect(splitLanes(grown, 1)).toHaveLength(1);
    expect(Math.abs((splitLanes(grown, 2)[0]?.to ?? 0) - 40)).toBeLessThan(20);
  });

  test('are none where nothing moves, and never more than there are pixels', () => {
    expect(splitLanes(new Float64Array(80), null)).toEqual([]);
    expect(splitLanes(new Float64Array(80), 3)).toEqual([]);
    expect(splitLanes(Float64Array.of(1, 2, 1), 9).length).toBeLessThanOrEqual(3);
  });
});
