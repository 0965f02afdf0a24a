import { describe, expect, test } from 'vitest';
import { seededRandom } from '../../../src-core/platform/seeded-random.ts';
import { alignLanes } from '../../../src-core/signal/align-lanes.ts';
import { STEPS_PER_CYCLE } from '../../../src-core/signal/cycle-samples.ts';
import type { LaneFlow } from '../../../src-core/signal/lane-signal.ts';

const CYCLES = 6;

/** Down and up once a cycle, the way down quicker than the way up; so many steps behind. */
function move(behind: number, noise = 0, cycles = CYCLES): LaneFlow {
  const random = seededRandom(7 + behind);
  const length = (cycles + 2) * STEPS_PER_CYCLE;
  const draw = () => noise * (random() + random() + random() - 1.5);
  const turn = (step: number) => (2 * Math.PI * (step - behind)) / STEPS_PER_CYCLE;
  return {
    u: Float64Array.from({ length }, draw),
    v: Float64Array.from(
      { length },
      (_, step) => Math.sin(turn(step)) + 0.5 * Math.sin(2 * turn(step)) + draw(),
    ),
  };
}

/** Lags of lanes in the first run, against those of the first lane. */
const compare = (flows: readonly LaneFlow[]) => {
  const lags = alignLanes(flows.map((flow) => [flow])).map(([run]) => run ?? []);
  return lags.map((run) => run.map(({ steps }, cycle) => steps - (lags[0]?.[cycle]?.steps ?? 0)));
};

describe('lanes of a group', () => {
  test('stand as far apart as they were moved, in every cycle', () => {
    const [, second, third] = compare([move(0), move(3), move(-2)]);
    expect(second).toHaveLength(CYCLES);
    for (const steps of second ?? []) expect(Math.abs(steps - 3)).toBeLessThan(0.15);
    for (const steps of third ?? []) expect(Math.abs(steps + 2)).toBeLessThan(0.15);
  });

  test('are told apart through noise as strong as the movement', () => {
    const [, second] = compare([move(0, 1), move(4, 1), move(0, 1)]);
    for (const steps of second ?? []) expect(Math.abs(steps - 4)).toBeLessThan(1.2);
  });

  test('have lags in each run of their own', () => {
    const lags = alignLanes([
      [move(0), move(0, 0, 3)],
      [move(2), move(5, 0, 3)],
    ]);
    const first = (run: number) => (lags[1]?.[run]?.[0]?.steps ?? 0) - (lags[0]?.[run]?.[0]?.steps ?? 0);
    expect(lags[1]?.map((run) => run.length)).toEqual([CYCLES, 3]);
    expect(first(0)).toBeCloseTo(2, 0);
    expect(first(1)).toBeCloseTo(5, 0);
  });

  test('hold nothing of the cycle where one stands still', () => {
    const still = { u: new Float64Array(192), v: new Float64Array(192) };
    for (const { match } of alignLanes([[move(0)], [move(0)], [still]])[2]?.flat() ?? [])
      expect(match).toBe(0);
  });
});
