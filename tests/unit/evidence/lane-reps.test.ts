import { describe, expect, test } from 'vitest';
import { findDone, LANE_REP_RULE, measureReps } from '../../../src-core/evidence/lane-reps.ts';
import type { SampledRun } from '../../../src-core/signal/cycle-samples.ts';
import { MARGIN_CYCLES, STEPS_PER_CYCLE } from '../../../src-core/signal/cycle-samples.ts';

const CYCLES = 6;
const REPS = Array.from({ length: CYCLES }, (_, cycle) => ({
  run: 0,
  from: cycle * STEPS_PER_CYCLE,
  to: (cycle + 1) * STEPS_PER_CYCLE,
}));

/** A run of two cells, each moved as far in each cycle as its sizes say; the second goes to the right as well. */
function sample(sizes: readonly (readonly number[])[], behind = 0): SampledRun {
  const steps = (CYCLES + 2 * MARGIN_CYCLES) * STEPS_PER_CYCLE;
  const speed = (step: number, cell: number) => {
    const at = step - behind - MARGIN_CYCLES * STEPS_PER_CYCLE;
    const size = sizes[cell]?.[Math.floor(at / STEPS_PER_CYCLE)] ?? 0;
    return size * Math.sin((2 * Math.PI * at) / STEPS_PER_CYCLE);
  };
  const place = (at: number) => [at >> 1, at % 2] as const;
  return {
    cycles: CYCLES,
    edgesSeconds: Float64Array.from({ length: steps + 1 }, (_, step) => step / 10),
    u: Float32Array.from({ length: 2 * steps }, (_, at) => (at % 2) * speed(...place(at))),
    v: Float32Array.from({ length: 2 * steps }, (_, at) => speed(...place(at))),
  };
}

/** Cells of a lane, 1 for its own. */
const own = (...cells: readonly number[]) =>
  Float64Array.from({ length: 2 * STEPS_PER_CYCLE }, (_, at) => cells[at % 2] ?? 0);

const FULL = [1, 1, 1, 1, 1, 1];
const measure = (run: SampledRun, weights: Float64Array, behindSteps = 0) =>
  measureReps([run], weights, REPS, { behindSteps, rule: LANE_REP_RULE });

describe('the reps of one lane', () => {
  test('are all alike where all were done', () => {
    for (const size of measure(sample([FULL, FULL]), own(1, 1))) expect(size).toBeCloseTo(1, 1);
  });

  test('show which were left out, and which were done by half', () => {
    const sizes = measure(sample([[1, 1, 0, 1, 0.5, 1], FULL]), own(1, 0));
    expect(sizes.map((size) => size >= LANE_REP_RULE.doneShare)).toEqual([
      true,
      true,
      false,
      true,
      true,
      true,
    ]);
    expect(sizes[2]).toBeCloseTo(0, 1);
    expect(sizes[4]).toBeCloseTo(0.5, 1);
  });

  test('are those of its own cells alone', () => {
    const run = sample([FULL, [0, 0, 1, 1, 1, 1]]);
    expect(measure(run, own(1, 0)).every((size) => size > 0.9)).toBe(true);
    expect(measure(run, own(0, 1)).filter((size) => size > 0.9)).toHaveLength(4);
  });

  test('are found later where the lane is behind the group', () => {
    for (const size of measure(sample([FULL, FULL], 6), own(1, 1), 6)) expect(size).toBeCloseTo(1, 1);
  });

  test('are left out as well where the gap lies half on one rep of the group and half on the next', () => {
    const gap = sample([[1, 1, 0, 1, 1, 1], FULL], STEPS_PER_CYCLE / 2);
    const done = findDone([gap], own(1, 0), REPS, { behindSteps: 0, rule: LANE_REP_RULE });
    expect(done.filter((isDone) => !isDone)).toHaveLength(1);
    const whole = sample([FULL, FULL], STEPS_PER_CYCLE / 2);
    expect(findDone([whole], own(1, 0), REPS, { behindSteps: 0, rule: LANE_REP_RULE })).not.toContain(false);
  });
});
