import { describe, expect, test } from 'vitest';
import { readMovement } from '../../../src-core/evidence/clip-movement.ts';
import { findReps } from '../../../src-core/evidence/reps.ts';
import type { RepsFinding } from '../../../src-core/evidence/reps-finding.ts';
import type { MotionSeries } from '../../../src-core/signal/motion-series.ts';
import type { MadeClip, MadePerformer } from './made-motion.ts';
import { listBoundaries, makeMotion } from './made-motion.ts';

const ALONE: readonly MadePerformer[] = [{ columns: [8, 4] }];

function count(clip: MadeClip, performers = ALONE): RepsFinding {
  return findReps(makeMotion(performers, clip), { counting: 'cycle' });
}

/** The frames of a series from one instant to another. */
function cut(motion: MotionSeries, fromSeconds: number, toSeconds: number): MotionSeries {
  const first = Math.round(fromSeconds * motion.rateHz);
  const last = Math.min(motion.frameCount, Math.round(toSeconds * motion.rateHz));
  const take = (plane: Float32Array) => {
    const per = plane.length / motion.frameCount;
    return plane.slice(first * per, last * per);
  };
  const { u, v, camera } = motion;
  return {
    ...motion,
    frameCount: last - first,
    u: take(u),
    v: take(v),
    camera: take(camera),
  };
}

function join(one: MotionSeries, other: MotionSeries): MotionSeries {
  const both = (plane: 'u' | 'v' | 'camera') => Float32Array.from([...one[plane], ...other[plane]]);
  return {
    ...one,
    frameCount: one.frameCount + other.frameCount,
    u: both('u'),
    v: both('v'),
    camera: both('camera'),
  };
}

describe('reps of a plain clip', () => {
  const clip = { cycleSeconds: 2, cycles: 8 };
  const finding = count(clip);

  test('are counted, with the time of each', () => {
    expect(finding.count).toBe(8);
    expect(finding.timesSeconds).toHaveLength(8);
    for (const [index, at] of finding.timesSeconds.entries()) {
      expect(Math.abs(at - (listBoundaries(clip)[index + 1] ?? 0))).toBeLessThan(0.3);
    }
  });

  test('have a cycle length and a span without the time before and after', () => {
    expect(finding.cycleSeconds).toBeCloseTo(2, 1);
    expect(finding.spanSeconds?.[0]).toBeCloseTo(2, 0);
    expect(finding.spanSeconds?.[1]).toBeCloseTo(18, 0);
  });

  test('carry confidence from 0 to 1, each and as a whole', () => {
    expect(finding.confidence).toBeGreaterThan(0.7);
    expect(finding.repConfidences).toHaveLength(8);
    for (const confidence of [...finding.repConfidences, finding.confidence]) {
      expect(confidence).toBeGreaterThan(0.3);
      expect(confidence).toBeLessThanOrEqual(1);
    }
  });

  test('leave a trace a frame: length of the cycle under way, 0 outside, and a line to draw', () => {
    const { cycleSecondsAt, strength, signal, rateHz } = finding.trace;
    const frameCount = makeMotion(ALONE, clip).frameCount;
    expect([cycleSecondsAt.length, strength.length, signal.length]).toEqual([
      frameCount,
      frameCount,
      frameCount,
    ]);
    expect(cycleSecondsAt[10 * rateHz]).toBeCloseTo(2, 0);
    expect(cycleSecondsAt[5]).toBe(0);
    expect(Math.max(...signal.map(Math.abs))).toBeLessThanOrEqual(1);
  });

  test('count two a cycle where each side is one', () => {
    const sides = findReps(makeMotion(ALONE, clip), { counting: 'side' });
    expect(sides.count).toBe(16);
    expect(sides.timesSeconds).toHaveLength(16);
    expect(sides.cycleSeconds).toBeCloseTo(2, 1);
    expect(sides.runs[0]?.boundariesSeconds).toHaveLength(9);
  });
});

describe('reps', () => {
  test.each<[string, MadeClip, (readonly MadePerformer[])?]>([
    ['four a second', { cycleSeconds: 0.25, cycles: 40 }],
    ['one in eight seconds', { cycleSeconds: 8, cycles: 4 }],
    ['that grow slower by a third', { cycleSeconds: 2, cycles: 9, drift: 0.35 }],
    ['that grow faster by a third', { cycleSeconds: 2, cycles: 9, drift: -0.35 }],
    ['three in a long clip', { cycleSeconds: 1.6, cycles: 3, startsAtSeconds: 20 }],
    ['while somebody walks through', { cycleSeconds: 2, cycles: 8, walkInAtSeconds: 8 }],
    [
      'of a group at four phases',
      { cycleSeconds: 2.4, cycles: 8 },
      [0, 0.6, 1.2, 1.8].map((lagSeconds, index) => ({ columns: [1 + 5 * index, 3] as const, lagSeconds })),
    ],
    [
      'that one of three stands through in part',
      { cycleSeconds: 2, cycles: 10 },
      [{ columns: [1, 4] }, { columns: [8, 4] }, { columns: [14, 4], missed: [3, 4, 5] }],
    ],
    ['from side to side', { cycleSeconds: 1.8, cycles: 8 }, [{ columns: [6, 6], direction: [1, 0] }]],
  ])('%s are counted', (_, clip, performers) => {
    expect(count(clip, performers).count).toBe(clip.cycles);
  });

  test('before and after a pause are counted apart, and the pause is in no run', () => {
    const one = makeMotion(ALONE, { cycleSeconds: 2, cycles: 4 });
    const finding = findReps(join(one, one), { counting: 'cycle' });
    expect(finding.count).toBe(8);
    expect(finding.runs.map((run) => run.confidences.length)).toEqual([4, 4]);
    expect(finding.trace.cycleSecondsAt[Math.round(12 * 15)]).toBe(0);
  });

  test.each([
    ['mid-rep at its begin, most of it seen', 2.4, 99, 6],
    ['mid-rep at its begin, little of it seen', 3.6, 99, 5],
    ['mid-rep at its end, hardly any of it left', 0, 13.8, 6],
    ['mid-rep at its end, most of it seen', 0, 13.3, 5],
    ['mid-rep at its end, little of it seen', 0, 12.3, 5],
  ])('of a clip that is cut %s are those that are done', (_, from, to, wanted) => {
    const motion = makeMotion(ALONE, { cycleSeconds: 2, cycles: 6 });
    expect(findReps(cut(motion, from, to), { counting: 'cycle' }).count).toBe(wanted);
  });

  test('of a clip whose pictures begin late have the clip’s own times, in unison and trace too', () => {
    const motion = makeMotion([{ columns: [1, 4] }, { columns: [12, 4] }], { cycleSeconds: 2, cycles: 6 });
    const options = { reps: { counting: 'cycle' }, unison: { toleranceSeconds: 0.35 } } as const;
    const [own, late] = [motion, { ...motion, fromSeconds: 3 }].map((one) => readMovement(one, options));
    const shift = (times: readonly number[] = []) => times.map((at) => expect.closeTo(at + 3, 6));
    expect(late?.reps.timesSeconds).toEqual(shift(own?.reps.timesSeconds));
    expect(late?.reps.spanSeconds).toEqual(shift(own?.reps.spanSeconds ?? []));
    expect(late?.unison?.lanes.map(({ reps }) => reps)).toEqual([6, 6]);
    expect(late?.unison?.windows.map(({ fromSeconds }) => fromSeconds)).toEqual(
      shift(own?.unison?.windows.map(({ fromSeconds }) => fromSeconds)),
    );
    expect(late?.reps.trace.signal.slice(45)).toEqual(own?.reps.trace.signal);
    expect(late?.reps.trace.cycleSecondsAt.slice(45)).toEqual(own?.reps.trace.cycleSecondsAt);
  });

  test('that the tempo of the exercise rules out are not taken', () => {
    const motion = makeMotion(ALONE, { cycleSeconds: 2, cycles: 10 });
    const finding = findReps(motion, { counting: 'cycle', cycleSeconds: [3, 6] });
    expect(finding.count === null || (finding.cycleSeconds ?? 0) > 2.8).toBe(true);
  });

  test('are the same however often they are asked for, and leave the motion as it was', () => {
    const motion = makeMotion(ALONE, { cycleSeconds: 2, cycles: 5 });
    const before = motion.v.slice();
    expect(findReps(motion, { counting: 'cycle' })).toEqual(findReps(motion, { counting: 'cycle' }));
    expect(motion.v).toEqual(before);
  });
});

describe('no reps', () => {
  test.each<[string, MotionSeries]>([
    ['noise alone', makeMotion([], { cycleSeconds: 2, cycles: 8 })],
    [
      'noise and somebody who walks through',
      makeMotion([], { cycleSeconds: 2, cycles: 8, walkInAtSeconds: 6 }),
    ],
    ['a single rep', makeMotion(ALONE, { cycleSeconds: 2, cycles: 1 })],
    ['no frames', cut(makeMotion(ALONE, { cycleSeconds: 2, cycles: 2 }), 0, 0)],
    ['one frame', cut(makeMotion(ALONE, { cycleSeconds: 2, cycles: 2 }), 0, 1 / 15)],
    ['half a second', cut(makeMotion(ALONE, { cycleSeconds: 2, cycles: 2 }), 3, 3.5)],
  ])('are found in %s', (_, motion) => {
    const finding = findReps(motion, { counting: 'cycle' });
    expect(finding.count).toBeNull();
    expect([finding.cycleSeconds, finding.spanSeconds]).toEqual([null, null]);
    expect([finding.timesSeconds, finding.repConfidences, finding.runs]).toEqual([[], [], []]);
    expect(finding.confidence).toBeGreaterThan(0.9);
    expect(finding.trace.cycleSecondsAt.every((value) => value === 0)).toBe(true);
  });

  test('are found where a movement is too small to be one', () => {
    const motion = makeMotion(ALONE, { cycleSeconds: 6, cycles: 5, noise: 0 });
    const breath = {
      ...motion,
      u: motion.u.map((value) => value * 0.002),
      v: motion.v.map((value) => value * 0.002),
    };
    expect(findReps(breath, { counting: 'cycle' }).count).toBeNull();
  });
});
