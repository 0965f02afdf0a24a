import { describe, expect, test } from 'vitest';
import type { RepsFinding } from '../../../src-core/evidence/reps-finding.ts';
import { measureUnison } from '../../../src-core/evidence/unison.ts';
import type { GivenLanes } from '../../../src-core/evidence/unison-finding.ts';
import { listWindows } from '../../../src-core/evidence/unison-score.ts';
import { listBoundaries, type MadeClip, type MadePerformer, makeMotion } from './made-motion.ts';

const CLIP: MadeClip = { cycleSeconds: 2, cycles: 10 };
const LEFT: MadePerformer = { columns: [1, 4] };
const MIDDLE: MadePerformer = { columns: [8, 4] };
const RIGHT: MadePerformer = { columns: [15, 4] };

/** What a perfect count of the clip would say. */
function countReps(clip: MadeClip, perCycle: 1 | 2 = 1): RepsFinding {
  const boundaries = listBoundaries(clip);
  const at = (cycle: number) => {
    const from = boundaries[Math.floor(cycle)] ?? 0;
    return from + (cycle % 1) * ((boundaries[Math.floor(cycle) + 1] ?? from) - from);
  };
  const count = clip.cycles * perCycle;
  return {
    count,
    confidence: 1,
    timesSeconds: Array.from({ length: count }, (_, rep) => at((rep + 1) / perCycle)),
    repConfidences: Array.from({ length: count }, () => 1),
    cycleSeconds: clip.cycleSeconds,
    spanSeconds: [at(0), at(clip.cycles)],
    runs: [
      {
        boundariesSeconds: boundaries,
        confidences: Array.from({ length: clip.cycles }, () => 1),
      },
    ],
    trace: {
      rateHz: 15,
      cycleSecondsAt: new Float32Array(0),
      strength: new Float32Array(0),
      signal: new Float32Array(0),
    },
  };
}

function measure(
  performers: readonly MadePerformer[],
  clip: MadeClip = CLIP,
  lanes: GivenLanes | null = null,
) {
  return measureUnison(makeMotion(performers, clip), countReps(clip), { lanes, toleranceSeconds: 0.35 });
}

describe('unison', () => {
  test('of three in step is near 1, with a lane each and no lag to speak of', () => {
    const found = measure([LEFT, MIDDLE, RIGHT]);
    expect(found?.score).toBeGreaterThan(0.97);
    expect(found?.together).toBe(true);
    expect(found?.alternating).toBe(false);
    expect(found?.lanes.map(({ x }) => Math.round(x * 20))).toEqual([3, 10, 17]);
    for (const lane of found?.lanes ?? []) {
      expect(Math.abs(lane.lagSeconds)).toBeLessThan(0.02);
      expect(lane.reps).toBe(10);
      expect(lane.steadiness).toBeGreaterThan(0.97);
    }
  });

  test('names who is behind (positive) and who is ahead (negative), in seconds, for each rep too', () => {
    const found = measure([
      { ...LEFT, lagSeconds: 0.3 },
      { ...MIDDLE, lagSeconds: 0 },
      { ...RIGHT, lagSeconds: -0.3 },
    ]);
    const lags = found?.lanes.map(({ lagSeconds }) => lagSeconds) ?? [];
    expect(lags[0]).toBeCloseTo(0.3, 1);
    expect(lags[1]).toBeCloseTo(0, 1);
    expect(lags[2]).toBeCloseTo(-0.3, 1);
    expect(found?.lanes[0]?.repLagsSeconds).toHaveLength(10);
    for (const lag of found?.lanes[0]?.repLagsSeconds ?? []) expect(lag).toBeCloseTo(0.3, 1);
    expect(found?.together).toBe(true);
  });

  test('proposes "not together" once a lane is further behind than the tolerance, and heeds a wider one', () => {
    const performers = [LEFT, MIDDLE, { ...RIGHT, lagSeconds: 0.75 }];
    expect(measure(performers)?.together).toBe(false);
    const slow = { ...CLIP, cycleSeconds: 4 };
    expect(measure(performers, slow, 3)?.together).toBe(false);
    const motion = makeMotion(performers, slow);
    expect(measureUnison(motion, countReps(slow), { lanes: 3, toleranceSeconds: 0.8 })?.together).toBe(true);
  });

  test.each([0.5, 0.7, 1])(
    'at a cycle of %d s is not proposed for whoever is anywhere in it',
    (cycleSeconds) => {
      const clip = { ...CLIP, cycleSeconds, cycles: 16 };
      const apart = (share: number) => measure([LEFT, { ...RIGHT, lagSeconds: share * cycleSeconds }], clip);
      expect(apart(0)?.together).toBe(true);
      for (const share of [0.4, 0.5, 0.6]) {
        const found = apart(share);
        expect(found?.together, `${share}`).toBe(false);
        expect(found?.score, `${share}`).toBeLessThan(0.1);
      }
      expect(apart(0.5)?.alternating).toBe(true);
      expect(apart(0)?.reachSeconds).toBeCloseTo(cycleSeconds / 6, 1);
    },
  );

  test('forgives one missed rep of few', () => {
    const clip = { ...CLIP, cycles: 4 };
    expect(measure([LEFT, MIDDLE, { ...RIGHT, missed: [3] }], clip)?.together).toBe(true);
  });

  test('counts the reps of each lane: one who stands through four of ten did six', () => {
    const found = measure([LEFT, MIDDLE, { ...RIGHT, missed: [2, 3, 7, 8] }]);
    expect(found?.lanes.map(({ reps }) => reps)).toEqual([10, 10, 6]);
    expect(found?.repCount).toBe(10);
    expect(found?.lanes[2]?.repLagsSeconds.flatMap((lag, rep) => (lag === null ? [rep] : []))).toEqual([
      2, 3, 7, 8,
    ]);
    expect(found?.together).toBe(false);
  });

  test('forgives one missed rep and no more', () => {
    expect(measure([LEFT, MIDDLE, { ...RIGHT, missed: [4] }])?.together).toBe(true);
    expect(measure([LEFT, MIDDLE, { ...RIGHT, missed: [4, 6] }])?.together).toBe(false);
  });

  test('counts half cycles where each side is a rep', () => {
    const motion = makeMotion([LEFT, MIDDLE, { ...RIGHT, missed: [9] }], CLIP);
    const found = measureUnison(motion, countReps(CLIP, 2), { toleranceSeconds: 0.35 });
    expect(found?.repCount).toBe(20);
    expect(found?.lanes.map(({ reps }) => reps)).toEqual([20, 20, 18]);
  });

  test('calls antiphase and a round "alternating", not poor', () => {
    const half = measure([LEFT, { ...MIDDLE, lagSeconds: 1 }]);
    expect(half?.alternating).toBe(true);
    expect(half?.together).toBe(false);
    expect(half?.score).toBeLessThan(0.05);
    const round = measure([LEFT, { ...MIDDLE, lagSeconds: 2 / 3 }, { ...RIGHT, lagSeconds: 4 / 3 }]);
    expect(round?.alternating).toBe(true);
    expect(measure([LEFT, { ...MIDDLE, lagSeconds: 0.6 }])?.alternating).toBe(false);
  });

  test('of four at their own paces scores near 0 and is not called alternating', () => {
    const found = measure(
      [
        { columns: [0, 4], cycleSeconds: 2 },
        { columns: [5, 4], cycleSeconds: 1.8 },
        { columns: [10, 4], cycleSeconds: 2.2 },
        { columns: [15, 4], cycleSeconds: 2.35 },
      ],
      { ...CLIP, cycles: 12 },
      4,
    );
    expect(found?.score).toBeLessThan(0.2);
    expect(found?.together).toBe(false);
    expect(found?.alternating).toBe(false);
  });

  test('is not thrown off by somebody who walks through, nor by noise', () => {
    const found = measure([LEFT, MIDDLE, { ...RIGHT, lagSeconds: 0.2 }], {
      ...CLIP,
      noise: 0.3,
      walkInAtSeconds: 9,
    });
    expect(found?.lanes).toHaveLength(3);
    expect(found?.lanes.map(({ reps }) => reps)).toEqual([10, 10, 10]);
    expect((found?.lanes[2]?.lagSeconds ?? 0) - (found?.lanes[0]?.lagSeconds ?? 0)).toBeCloseTo(0.2, 1);
    expect(found?.together).toBe(true);
  });

  test('tells a late front row from those behind whom it half covers', () => {
    const found = measure([
      { columns: [4, 5], rows: [1, 4] },
      { columns: [7, 5], rows: [5, 5], lagSeconds: 0.8 },
      { columns: [10, 5], rows: [1, 4] },
    ]);
    const lags = found?.lanes.map(({ lagSeconds }) => lagSeconds) ?? [];
    const behind = lags.map((lag) => (lag - Math.min(...lags)).toFixed(1));
    expect(new Set(behind)).toEqual(new Set(['0.0', '0.8']));
    expect(found?.together).toBe(false);
  });

  test('takes arms and legs of one body for one lane, but not two who keep two beats', () => {
    const arms: MadePerformer = { columns: [8, 4], rows: [2, 2] };
    const legs: MadePerformer = { columns: [8, 4], rows: [6, 2] };
    expect(measure([LEFT, arms, legs])?.lanes).toHaveLength(2);
    expect(measure([LEFT, arms, { ...legs, lagSeconds: 0.7 }])?.lanes).toHaveLength(3);
  });

  test('takes one who moves aslant for one of the group', () => {
    const sideways = [1, 0.1] as const;
    const found = measure([
      { ...LEFT, direction: sideways },
      { ...MIDDLE, direction: [1, -0.1] },
      { ...RIGHT, direction: [0.8, -0.45] },
    ]);
    expect(found?.score).toBeGreaterThan(0.95);
  });

  test('follows a tempo that drifts by a third', () => {
    const clip = { ...CLIP, drift: 0.33 };
    const found = measure([LEFT, { ...MIDDLE, lagSeconds: 0.25 }], clip);
    const [first, second] = found?.lanes ?? [];
    expect((second?.lagSeconds ?? 0) - (first?.lagSeconds ?? 0)).toBeCloseTo(0.25, 1);
    expect(second?.steadiness).toBeGreaterThan(0.95);
    expect(found?.together).toBe(true);
  });

  test('is scored in windows of 5 to 10 s that overlap by half', () => {
    const windows = measure([LEFT, MIDDLE, RIGHT])?.windows ?? [];
    expect(windows.length).toBeGreaterThan(3);
    for (const { fromSeconds, toSeconds, score } of windows) {
      expect(toSeconds - fromSeconds).toBeGreaterThanOrEqual(5);
      expect(toSeconds - fromSeconds).toBeLessThanOrEqual(10);
      expect(score).toBeGreaterThan(0.95);
    }
    expect((windows[1]?.fromSeconds ?? 0) - (windows[0]?.fromSeconds ?? 0)).toBeCloseTo(3, 1);
  });

  test('has no window beyond 10 s, whatever is left over', () => {
    const moments = Array.from({ length: 10 }, (_, at) => ({ atSeconds: 2 + 3 * at, excess: 1 }));
    const windows = listWindows(moments, 3);
    expect(windows.map(({ fromSeconds, toSeconds }) => toSeconds - fromSeconds)).toEqual(
      windows.map(() => expect.closeTo(9, 6)),
    );
    expect([windows[0]?.fromSeconds, windows.at(-1)?.toSeconds]).toEqual([2, 29]);
    const slow = listWindows(moments, 8);
    expect(slow.length).toBeGreaterThan(4);
    for (const { fromSeconds, toSeconds } of slow) expect(toSeconds - fromSeconds).toBeCloseTo(10, 6);
    expect(listWindows(moments.slice(0, 1), 3)).toEqual([{ fromSeconds: 2, toSeconds: 2, score: 1 }]);
  });

  test('is unknown of one alone, of nobody, and where nothing is periodic', () => {
    expect(measure([MIDDLE])).toBeNull();
    const reps = countReps(CLIP);
    expect(measureUnison(makeMotion([], { ...CLIP, noise: 0 }), reps, { toleranceSeconds: 0.35 })).toBeNull();
    const none: RepsFinding = { ...reps, count: null, timesSeconds: [], runs: [] };
    const motion = makeMotion([LEFT, MIDDLE], CLIP);
    expect(measureUnison(motion, none, { toleranceSeconds: 0.35 })).toBeNull();
  });

  test('has as many lanes as the teacher says, where the profile alone would see fewer', () => {
    const close: MadePerformer[] = [
      { columns: [4, 4] },
      { columns: [8, 4], lagSeconds: 0.8 },
      { columns: [14, 4] },
    ];
    const found = measure(close, CLIP, 3);
    expect(found?.lanes).toHaveLength(3);
    expect(found?.together).toBe(false);
    expect((found?.lanes[1]?.lagSeconds ?? 0) - (found?.lanes[0]?.lagSeconds ?? 0)).toBeGreaterThan(0.6);
  });

  test('has its lanes where the teacher says, in whatever order, also of uneven widths', () => {
    const uneven: MadePerformer[] = [
      { columns: [1, 8] },
      { columns: [11, 3], lagSeconds: 0.8 },
      { columns: [14, 3] },
    ];
    const found = measure(uneven, CLIP, [0.775, 0.25, 0.625]);
    expect(found?.lanes.map(({ x }) => x)).toEqual([0.25, 0.625, 0.775].map((x) => expect.closeTo(x, 5)));
    const [wide = 0, late = 0, last = 0] = found?.lanes.map(({ lagSeconds }) => lagSeconds) ?? [];
    expect(late - wide).toBeCloseTo(0.8, 1);
    expect(late - last).toBeCloseTo(0.8, 1);
    expect(found?.missingLanes).toBe(0);
  });

  test('misses a lane that the teacher puts where nobody moves, and has none of one alone', () => {
    const found = measure([LEFT, MIDDLE], { ...CLIP, noise: 0 }, [0.15, 0.5, 0.95]);
    expect(found?.missingLanes).toBe(1);
    expect(found?.lanes).toHaveLength(2);
    expect(measure([LEFT, MIDDLE], CLIP, 1)).toBeNull();
  });
});
