import { describe, expect, test } from 'vitest';
import { MARGIN_CYCLES, STEPS_PER_CYCLE } from '../../../src-core/signal/cycle-samples.ts';
import { averageReturning } from '../../../src-core/signal/returning-energy.ts';

/** A run of one cell, moved as far in each cycle as its size says. */
function run(sizes: readonly number[]) {
  const steps = (sizes.length + 2 * MARGIN_CYCLES) * STEPS_PER_CYCLE;
  const u = Float32Array.from({ length: steps }, (_, step) => {
    const size = sizes[Math.floor(step / STEPS_PER_CYCLE) - MARGIN_CYCLES] ?? 0;
    return size * Math.sin((2 * Math.PI * step) / STEPS_PER_CYCLE);
  });
  return { cycles: sizes.length, u, v: new Float32Array(steps) };
}

const measure = (sizes: readonly number[]) =>
  averageReturning([run(sizes)], 1).reduce((sum, energy) => sum + energy, 0) / STEPS_PER_CYCLE;

describe('energy that returns', () => {
  test('is the mean square of what comes back every cycle', () => {
    expect(measure([1, 1, 1, 1, 1, 1])).toBeCloseTo(0.5, 6);
  });

  test('is less, but there, for who leaves out every other cycle', () => {
    const half = measure([1, 0, 1, 0, 1, 0]);
    expect(half).toBeGreaterThan(0.05);
    expect(half).toBeLessThan(0.25);
  });

  test('is nothing for what happens once, and below nothing for what turns round', () => {
    expect(measure([0, 0, 1, 0, 0, 0])).toBeCloseTo(0, 6);
    expect(measure([1, 1, -1, -1])).toBeLessThan(0);
  });

  test('is nothing in a run of one cycle, and in none', () => {
    expect(measure([1])).toBeCloseTo(0, 6);
    expect([...averageReturning([], 1)]).toEqual(Array.from({ length: STEPS_PER_CYCLE }, () => 0));
  });
});
