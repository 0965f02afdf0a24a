import { describe, expect, test } from 'vitest';
import { findHomes } from '../../../src-core/signal/find-homes.ts';
import { type HomeMap, sumColumns } from '../../../src-core/signal/home-map.ts';
import { splitLanes, splitLanesAt } from '../../../src-core/signal/lanes.ts';

/** A map of bell-shaped hills: [right, down, height, width] each. */
function drawMap(hills: readonly (readonly [number, number, number, number])[]): HomeMap {
  const [width, height] = [80, 45];
  const amounts = Float64Array.from({ length: width * height }, (_, at) => {
    const [x, y] = [(at % width) + 0.5, Math.floor(at / width) + 0.5];
    return hills.reduce(
      (sum, [right, down, tall, wide]) =>
        sum + tall * Math.exp(-((x - right) ** 2 + (y - down) ** 2) / (2 * wide ** 2)),
      0,
    );
  });
  return { width, height, amounts, homes: new Int32Array(0), energies: new Float64Array(0) };
}

const countHomes = (map: HomeMap) => findHomes(map).peaks.length;

const cut = (map: HomeMap, count: number) =>
  splitLanes(sumColumns(map), count).map(({ middle }) => Math.round(middle));

describe('the number of lanes', () => {
  test('is that of the hills, near ones and far ones', () => {
    const map = drawMap([
      [12, 25, 1, 4],
      [40, 22, 0.2, 3],
      [66, 25, 0.9, 4],
    ]);
    expect(countHomes(map)).toBe(3);
    expect(cut(map, 3)).toEqual([12, 40, 66]);
  });

  test('tells two rows apart that run together when seen from above', () => {
    const rows = drawMap([
      [30, 34, 1, 5],
      [43, 16, 0.3, 4],
    ]);
    expect(countHomes(rows)).toBe(2);
    const [above, between, beside] = [30, 37, 43].map((x) => sumColumns(rows)[x] ?? 0);
    expect(between).toBeLessThan(above ?? 0);
    expect(beside).toBeLessThan(between ?? 0);
  });

  test('does not count a low bump, a dent, nor what reaches a little out of one body', () => {
    expect(
      countHomes(
        drawMap([
          [20, 22, 1, 4],
          [60, 22, 0.05, 4],
        ]),
      ),
    ).toBe(1);
    const limbs = drawMap([
      [40, 22, 1, 3],
      [45, 28, 0.8, 2],
      [37, 16, 0.5, 2],
    ]);
    expect(countHomes(limbs)).toBe(1);
    const dented = drawMap([[40, 22, 1, 6]]);
    dented.amounts[22 * 80 + 40] = 0.99;
    expect(countHomes(dented)).toBe(1);
  });

  test('does not count scenery that sways far above or below the group', () => {
    const swaying = [20, 5, 0.4, 4] as const;
    const group = [
      [20, 30, 1, 4],
      [60, 30, 0.9, 4],
    ] as const;
    expect(countHomes(drawMap([...group, swaying]))).toBe(2);
    expect(countHomes(drawMap([...group, [40, 20, 0.4, 4]]))).toBe(3);
  });

  test('is none where nothing moves', () => {
    expect(countHomes(drawMap([]))).toBe(0);
    expect(new Set(findHomes(drawMap([])).owners)).toEqual(new Set([-1]));
  });
});

describe('homes', () => {
  test('own what lies on their hill, also where it reaches over another in the same columns', () => {
    const map = drawMap([
      [22, 14, 0.5, 4],
      [40, 32, 1, 5],
      [58, 14, 0.5, 4],
    ]);
    const { peaks, owners } = findHomes(map);
    const ownerAt = (x: number, y: number) => peaks[owners[y * 80 + x] ?? -1];
    expect(peaks).toHaveLength(3);
    for (const [x, y] of [
      [22, 14],
      [40, 32],
      [58, 14],
    ] as const) {
      const peak = ownerAt(x, y) ?? 0;
      expect(Math.hypot((peak % 80) - x, Math.floor(peak / 80) - y)).toBeLessThan(2);
    }
    // One column, two owners: who is behind keeps the upper part of it.
    expect(ownerAt(27, 14)).toBe(ownerAt(22, 14));
    expect(ownerAt(32, 36)).toBe(ownerAt(40, 32));
    expect(ownerAt(32, 14)).not.toBe(ownerAt(32, 36));
    // Where nothing moves, the nearest.
    expect(ownerAt(79, 0)).toBe(ownerAt(58, 14));
  });
});

describe('lanes', () => {
  const grown = drawMap([
    [10, 22, 1, 4],
    [33, 22, 1, 5.5],
    [46, 22, 1, 5.5],
    [70, 22, 1, 4],
  ]);

  test('are as many as the teacher says, also where two hills have grown together', () => {
    expect(cut(grown, 4).map((middle) => Math.round(middle / 4))).toEqual([3, 8, 12, 18]);
    expect(cut(grown, 1)).toHaveLength(1);
  });

  test('border on each other in the valleys', () => {
    const lanes = splitLanes(sumColumns(grown), 4);
    expect(lanes[0]?.to).toBe(lanes[1]?.from);
    expect(Math.abs((lanes[0]?.to ?? 0) - 20)).toBeLessThanOrEqual(3);
    expect(Math.abs((splitLanes(sumColumns(grown), 2)[0]?.to ?? 0) - 40)).toBeLessThan(20);
  });

  test('are none where nothing moves, and never more than there are pixels', () => {
    expect(splitLanes(new Float64Array(80), 3)).toEqual([]);
    expect(splitLanes(Float64Array.of(1, 2, 1), 0)).toEqual([]);
    expect(splitLanes(Float64Array.of(1, 2, 1), 9).length).toBeLessThanOrEqual(3);
  });

  test('stand round the places that the teacher gives, and border where least moves between them', () => {
    const lanes = splitLanesAt(sumColumns(grown), [46, 10, 70, 33]);
    expect(lanes.map(({ middle }) => middle)).toEqual([10, 33, 46, 70]);
    expect(lanes.slice(1).map(({ from }, at) => from - (lanes[at]?.to ?? 0))).toEqual([0, 0, 0]);
    // Between two hills of one height and width, the lowest point is half-way.
    expect(Math.abs((lanes[1]?.to ?? 0) - 39.5)).toBeLessThanOrEqual(1);
    expect(splitLanesAt(sumColumns(grown), [40])).toMatchObject([{ middle: 40 }]);
    expect(splitLanesAt(new Float64Array(80), [10, 20])).toEqual([]);
  });

  test('reach out to a place beyond all motion', () => {
    const [first, last] = splitLanesAt(sumColumns(drawMap([[40, 22, 1, 4]])), [2, 40]);
    expect(first?.from).toBeLessThanOrEqual(2);
    expect(last?.from).toBeGreaterThan(10);
  });
});
