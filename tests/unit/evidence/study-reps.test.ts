import { describe, expect, test } from 'vitest';
import { countRuns } from '../../../src-core/evidence/count-runs.ts';
import { listCycleRuns } from '../../../src-core/evidence/cycle-runs.ts';
import { REPS_RULE } from '../../../src-core/evidence/reps-rule.ts';
import { buildRepsTrace } from '../../../src-core/evidence/reps-trace.ts';
import { studyReps } from '../../../src-core/evidence/study-reps.ts';
import { trackCycles } from '../../../src-core/evidence/track-cycles.ts';
import type { MotionSeries } from '../../../src-core/signal/motion-series.ts';
import { makeVectors } from '../signal/made-vectors.ts';
import { makeMotion } from './made-motion.ts';

const TURN = 2 * Math.PI;
const RATE_HZ = 15;

const addUp = (one: Float32Array, other: Float32Array) => one.map((value, at) => value + (other[at] ?? 0));

/** Both motions in one picture; they last equally long. */
function layOver(one: MotionSeries, other: MotionSeries): MotionSeries {
  const [u, v] = [addUp(one.u, other.u), addUp(one.v, other.v)];
  return { ...one, u, v, fine: { ...one.fine, u, v } };
}

/** A cycle in `cycleSeconds` within each of the spans, stillness outside. */
function makeSpans(seconds: number, spans: readonly (readonly [number, number])[], cycleSeconds: number) {
  return makeVectors(seconds, (second, place) => {
    const span = spans.find(([from, to]) => second >= from && second < to);
    if (!span) return 0;
    const phase = (second - span[0]) / cycleSeconds;
    return Math.sin(TURN * phase + place) + 0.3 * Math.cos(2 * TURN * phase);
  });
}

/** Followed at a tempo that is expected, and thought to be under way wherever something moves. */
function follow(vectors: ReturnType<typeof makeVectors>, expectedSeconds: number) {
  const { frameCount, size, values } = vectors;
  const moves = (frame: number) =>
    Math.hypot(...values.subarray(frame * size, (frame + 1) * size)) > 1 ? 0.8 : 0;
  return trackCycles(
    vectors,
    new Float64Array(frameCount).fill(expectedSeconds * RATE_HZ),
    Float32Array.from({ length: frameCount }, (_, frame) => moves(frame)),
    REPS_RULE,
  );
}

describe('runs of cycles', () => {
  const track = follow(
    makeSpans(
      24,
      [
        [2, 8],
        [12, 20],
      ],
      2,
    ),
    2.1,
  );
  const runs = listCycleRuns(track, REPS_RULE);

  test('are the stretches between pauses, with the cycles of each', () => {
    expect(runs.map(({ cycles }) => Math.round(cycles))).toEqual([3, 4]);
    const spans = runs.map(({ first, last }) => [first * track.frameSeconds, last * track.frameSeconds]);
    expect(spans.flat().map(Math.round)).toEqual([2, 8, 12, 20]);
    for (const { explained } of runs) expect(explained).toBeGreaterThan(0.8);
  });

  test('say when so many of their cycles are done, and whether they begin and end at rest', () => {
    for (const [index, at] of [2, 12].entries()) {
      expect(runs[index]?.secondsAt(1)).toBeCloseTo(at + 2, 0);
      expect(runs[index]).toMatchObject({ startsAtRest: true, endsAtRest: true });
    }
    const [whole] = listCycleRuns(follow(makeSpans(9, [[-1, 99]], 1.5), 1.5), REPS_RULE);
    expect(whole).toMatchObject({ startsAtRest: false, endsAtRest: false });
    expect(whole?.cycles).toBeCloseTo(6, 0);
  });

  test('hold whole cycles with the share of their motion that is explained; by sides twice as many reps', () => {
    const clip = { durationSeconds: 24, rule: REPS_RULE };
    const cycles = countRuns(track, runs, { ...clip, counting: 'cycle' });
    expect(cycles.map(({ reps }) => reps.length)).toEqual([3, 4]);
    expect(cycles.map(({ boundariesSeconds }) => boundariesSeconds.length)).toEqual([4, 5]);
    for (const { reps } of cycles) for (const { confidence } of reps) expect(confidence).toBeGreaterThan(0.7);
    const sides = countRuns(track, runs, { ...clip, counting: 'side' });
    expect(sides.map(({ reps }) => reps.length)).toEqual([6, 8]);
    expect(sides.map(({ boundariesSeconds }) => boundariesSeconds.length)).toEqual([4, 5]);
  });
});

describe('the study of a clip', () => {
  const far = { columns: [2, 5] as const };
  const clip = { cycleSeconds: 2, cycles: 8 };

  test('stands firm on a plain movement, and on noise not at all', () => {
    const study = studyReps(makeMotion([far], clip), { counting: 'cycle' }, REPS_RULE);
    expect(study?.standing).toBeGreaterThan(2);
    expect(study?.cycles).toBeCloseTo(8, 0);
    expect(studyReps(makeMotion([], clip), { counting: 'cycle' }, REPS_RULE)?.standing ?? 0).toBeLessThan(1);
  });

  test('is whole only with both sides, however much of the body does the same for each', () => {
    const findCycles = (trunkColumns: number) => {
      const trunk = makeMotion([{ columns: [1, trunkColumns] }], { cycleSeconds: 1, cycles: 16 });
      const foot = makeMotion([{ columns: [trunkColumns + 2, 1] }], { cycleSeconds: 2, cycles: 8 });
      return studyReps(layOver(trunk, foot), { counting: 'cycle' }, REPS_RULE)?.cycles;
    };
    expect(findCycles(7)).toBeCloseTo(8, 0);
    // Among so much that repeats itself, one foot's other way may be anything.
    expect(findCycles(12)).toBeCloseTo(16, 0);
  });

  test('looks past a tremble that fills the picture for a movement that stands firmer', () => {
    const everywhere = { columns: [0, 20], rows: [4, 7], direction: [0, 0.06] } as const;
    const noise = 0.005;
    const tremble = makeMotion([everywhere], { cycleSeconds: 0.5, cycles: 32, noise });
    const arm = makeMotion([{ columns: [2, 2], rows: [0, 2], direction: [0.15, 0] }], { ...clip, noise });
    const findCycles = (firmStanding: number) =>
      studyReps(layOver(tremble, arm), { counting: 'cycle' }, { ...REPS_RULE, firmStanding })?.cycles;
    expect(findCycles(0)).toBeCloseTo(32, 0);
    expect(findCycles(REPS_RULE.firmStanding)).toBeCloseTo(8, 0);
  });

  test('is drawn from the clip’s begin on, where its pictures begin late too', () => {
    const motion = { ...makeMotion([far], clip), fromSeconds: 2 };
    const study = studyReps(motion, { counting: 'cycle' }, REPS_RULE);
    const trace = buildRepsTrace(motion, study, [{ boundariesSeconds: [4, 6, 9], confidences: [1, 1] }]);
    expect(trace.signal).toHaveLength(motion.frameCount + 2 * RATE_HZ);
    expect([...trace.signal.subarray(0, 30)].every((value) => value === 0)).toBe(true);
    expect(Math.max(...trace.signal)).toBeGreaterThan(0.8);
    expect([3, 5, 8, 10].map((at) => trace.cycleSecondsAt[at * RATE_HZ])).toEqual([0, 2, 3, 0]);
  });
});
