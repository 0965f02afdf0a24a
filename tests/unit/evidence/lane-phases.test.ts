import { describe, expect, test } from 'vitest';
import { isAlternating } from '../../../src-core/evidence/alternation.ts';
import { measurePhases } from '../../../src-core/evidence/lane-phases.ts';
import { STEPS_PER_CYCLE } from '../../../src-core/signal/cycle-samples.ts';
import type { LaneFlow } from '../../../src-core/signal/lane-signal.ts';

const CYCLES = 8;

/** A lane of eight cycles, behind by so many steps at each step of its run. */
function move(behind: (step: number) => number): LaneFlow {
  const length = (CYCLES + 2) * STEPS_PER_CYCLE;
  const turn = (step: number) => (2 * Math.PI * (step - behind(step))) / STEPS_PER_CYCLE;
  return {
    u: new Float64Array(length),
    v: Float64Array.from({ length }, (_, step) => Math.sin(turn(step)) + 0.4 * Math.sin(2 * turn(step))),
  };
}

const measure = (...lanes: ((step: number) => number)[]) =>
  measurePhases(lanes.map((behind) => [move(behind)]));
const STEP = (2 * Math.PI) / STEPS_PER_CYCLE;

describe('the phase of a lane', () => {
  test('is measured from the middle of the group, behind is negative', () => {
    const [early, late] = measure(
      () => -2,
      () => 2,
    );
    expect(early?.phase).toBeCloseTo(2 * STEP, 1);
    expect(late?.phase).toBeCloseTo(-2 * STEP, 1);
  });

  test('leaves out what the whole group does at once', () => {
    const sway = (step: number) => 2 * Math.sin(step / 40);
    for (const { cyclePhases } of measure(sway, (step) => sway(step) + 3)) {
      for (const phase of cyclePhases) expect(Math.abs(Math.abs(phase) - 1.5 * STEP)).toBeLessThan(0.15);
    }
  });

  test('is steady for those who keep their place, and not for one with an own tempo', () => {
    const phases = measure(
      () => 0,
      () => 1,
      () => 0,
      (step) => step / 8,
    );
    for (const { steadiness } of phases.slice(0, 3)) expect(steadiness).toBeGreaterThan(0.9);
    expect(phases[3]?.steadiness).toBeLessThan(0.7);
  });
});

// Even distances on the circle: angles of regular polygons.
describe('by turns', () => {
  const turn = (...shares: number[]) => shares.map((share) => 2 * Math.PI * share);

  test.each<[string, boolean, readonly number[]]>([
    ['two half a cycle apart', true, turn(0, 0.5)],
    ['four, half and half', true, turn(0, 0.5, 0, 0.5)],
    ['three in a round', true, turn(0, 1 / 3, 2 / 3)],
    ['four in a round, not quite even', true, turn(0.02, 0.25, 0.48, 0.76)],
    ['two together', false, turn(0, 0.03)],
    ['three together and one half a cycle off', false, turn(0, 0.02, 0, 0.5)],
    ['three at uneven distances', false, turn(0, 0.2, 0.6)],
    ['one alone', false, turn(0)],
  ])('%s: %s', (_, expected, phases) => {
    expect(isAlternating(phases)).toBe(expected);
  });
});
