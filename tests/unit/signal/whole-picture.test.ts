import { describe, expect, test } from 'vitest';
import type { FlowVectors } from '../../../src-core/signal/flow-vectors.ts';
import { buildWholePicture } from '../../../src-core/signal/whole-picture.ts';

const COLUMNS = 6;
const ROWS = 6;

interface Mover {
  readonly column: number;
  readonly row: number;
  readonly right: number;
  readonly down: number;
}

/** One frame in which these cells alone move. */
function drawFlow(movers: readonly Mover[]): FlowVectors {
  const size = 2 * COLUMNS * ROWS;
  const values = new Float32Array(size);
  for (const { column, row, right, down } of movers) {
    values[2 * (row * COLUMNS + column)] = right;
    values[2 * (row * COLUMNS + column) + 1] = down;
  }
  return { rateHz: 15, frameCount: 1, size, values };
}

function see(...movers: Mover[]): number[] {
  return Array.from(buildWholePicture(drawFlow(movers), COLUMNS).values, (value) => Number(value.toFixed(4)));
}

describe('the whole picture', () => {
  const arm: Mover = { column: 1, row: 1, right: 1, down: 2 };

  test('sees the other arm do as this one does', () => {
    expect(see({ ...arm, column: 4, right: -1 })).toEqual(see(arm));
  });

  test('sees somebody whom the camera shows further to the side do the same', () => {
    expect(see({ ...arm, column: 5 })).toEqual(see(arm));
  });

  test('tells up from down, and a head from feet', () => {
    expect(see({ ...arm, down: -2 })).not.toEqual(see(arm));
    expect(see({ ...arm, row: 5 })).not.toEqual(see(arm));
  });

  test('adds up what moves, however many they are', () => {
    const one = see(arm);
    for (const [index, value] of see(arm, { ...arm, column: 3 }).entries())
      expect(value).toBeCloseTo(2 * (one[index] ?? 0), 3);
  });

  test('is still where nothing moves', () => {
    expect(see().every((value) => value === 0)).toBe(true);
  });
});
