import { describe, expect, test } from 'vitest';
import { seededRandom } from '../../../src-core/platform/seeded-random.ts';
import { STEPS_PER_CYCLE } from '../../../src-core/signal/cycle-samples.ts';
import { followLag } from '../../../src-core/signal/lane-lag.ts';
import type { LaneFlow } from '../../../src-core/signal/lane-signal.ts';

const CYCLES = 8;
const STRETCHES = Array.from({ length: CYCLES }, (_, cycle) => ({
  from: (cycle + 1) * STEPS_PER_CYCLE,
  to: (cycle + 2) * STEPS_PER_CYCLE,
}));

/** Two hands a cycle, both up and down, one to the right and one to the left; `behind` gives each step's lag in steps. */
function tap(behind: (step: number) => number, noise = 0): LaneFlow {
  const random = seededRandom(11);
  const draw = () => noise * (random() + random() + random() - 1.5) * 2;
  const length = (CYCLES + 2) * STEPS_PER_CYCLE;
  const turn = (step: number) => (2 * Math.PI * (step - behind(step))) / STEPS_PER_CYCLE;
  return {
    u: Float64Array.from({ length }, (_, step) => 0.3 * Math.sin(turn(step)) + draw()),
    v: Float64Array.from({ length }, (_, step) => Math.sin(2 * turn(step)) + draw()),
  };
}

const CYCLE = tap(() => 0);
const follow = (lane: LaneFlow) => followLag(lane, CYCLE, STRETCHES).map(({ steps }) => steps);

describe('the lag of a lane', () => {
  test('is found where the strongest part of the movement comes twice a cycle', () => {
    for (const behind of [-7, -2.5, 0, 3.25, 6]) {
      for (const steps of follow(tap(() => behind))) expect(Math.abs(steps - behind)).toBeLessThan(0.1);
    }
  });

  test('does not jump by half a cycle where noise hides which hand it is', () => {
    for (const steps of follow(tap(() => 3, 0.5))) expect(Math.abs(steps - 3)).toBeLessThan(2);
  });

  test('grows with every cycle of one who keeps a slower tempo', () => {
    const lags = follow(tap((step) => step / STEPS_PER_CYCLE));
    for (const [at, steps] of lags.slice(1).entries()) {
      expect(steps - (lags[at] ?? 0)).toBeGreaterThan(0.7);
      expect(steps - (lags[at] ?? 0)).toBeLessThan(1.4);
    }
  });

  test('is half a cycle for one who really is half a cycle behind', () => {
    for (const steps of follow(tap(() => 12))) expect(Math.abs(Math.abs(steps) - 12)).toBeLessThan(0.1);
  });

  test('comes with no match for one who stands', () => {
    const still = { u: new Float64Array(240), v: new Float64Array(240) };
    for (const { match } of followLag(still, CYCLE, STRETCHES)) expect(match).toBe(0);
    for (const { match } of followLag(CYCLE, CYCLE, STRETCHES)) expect(match).toBeCloseTo(1, 9);
  });
});
