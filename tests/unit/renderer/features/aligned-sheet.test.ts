import { describe, expect, test } from 'vitest';
import { alignSheets, countFromFirstRep } from '../../../../renderer/features/review/aligned-sheet.ts';
import type { CountSheet } from '../../../../renderer/features/review/count-sheet.ts';

/** Reps of one length from an instant on, without a pause. */
function buildSheet(from: number, reps: number, repSeconds: number): CountSheet {
  const lines = Array.from({ length: reps }, (_, at) => ({
    number: at + 1,
    atSeconds: from + (at + 1) * repSeconds,
    fromSeconds: from + at * repSeconds,
    toSeconds: from + (at + 1) * repSeconds,
    top: at / reps,
    height: 1 / reps,
    jpeg: null,
  }));
  return { lines, folds: [], without: null, fromSeconds: from, toSeconds: from + reps * repSeconds };
}

const UNCOUNTED: CountSheet = { ...buildSheet(0, 3, 4), without: 'none-found' };

describe('count sheets side by side', () => {
  test('begin with their first reps, and equal heights are equal times', () => {
    const { sheets, lengthSeconds, shortestRepSeconds } = alignSheets([
      buildSheet(6, 10, 2),
      buildSheet(1.5, 8, 3),
    ]);
    expect({ lengthSeconds, shortestRepSeconds }).toEqual({ lengthSeconds: 24, shortestRepSeconds: 2 });
    expect(sheets.map(({ lines }) => lines[0]?.top)).toEqual([0, 0]);
    // Six seconds after the first rep began: the fourth rep of one, the third of the other.
    expect([sheets[0]?.lines[3]?.top, sheets[1]?.lines[2]?.top]).toEqual([0.25, 0.25]);
    expect([sheets[0]?.getShare(12), sheets[1]?.getShare(7.5)]).toEqual([0.25, 0.25]);
    expect(sheets[0]?.lines.at(-1)).toMatchObject({
      top: expect.closeTo(18 / 24),
      height: expect.closeTo(2 / 24),
    });
  });

  test('begin with the clip where its reps are not known', () => {
    const { sheets, shortestRepSeconds } = alignSheets([UNCOUNTED, buildSheet(5, 4, 2)]);
    expect(sheets.map(({ firstSeconds }) => firstSeconds)).toEqual([0, 5]);
    expect(shortestRepSeconds).toBe(2);
    expect(alignSheets([UNCOUNTED]).shortestRepSeconds).toBeNull();
  });

  test('are stepped through from the first rep on', () => {
    const counted = countFromFirstRep(buildSheet(6, 3, 2));
    expect(counted.lines.map(({ fromSeconds, toSeconds }) => [fromSeconds, toSeconds])).toEqual([
      [0, 2],
      [2, 4],
      [4, 6],
    ]);
    expect(countFromFirstRep(UNCOUNTED)).toEqual(UNCOUNTED);
  });
});
