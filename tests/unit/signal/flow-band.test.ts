import { describe, expect, test } from 'vitest';
import { buildFlowBand } from '../../../src-core/signal/flow-band.ts';
import { makeVectors } from './made-vectors.ts';

function energyOf(values: Float32Array): number {
  return values.reduce((sum, value) => sum + value * value, 0) / values.length;
}

describe('a band of one octave', () => {
  test('keeps a cycle of its own length', () => {
    const band = buildFlowBand(
      makeVectors(40, (second) => Math.sin(Math.PI * second), 0),
      22,
    );
    expect(energyOf(band.values)).toBeGreaterThan(0.4);
  });

  test('drops what stays the same, and what is far slower or faster', () => {
    const band = (at: (second: number) => number) =>
      energyOf(buildFlowBand(makeVectors(40, at, 0), 22).values);
    expect(band(() => 1)).toBeLessThan(1e-6);
    expect(band((second) => Math.sin(second / 6))).toBeLessThan(0.05);
    expect(band((second) => Math.sin(2 * Math.PI * 6 * second))).toBeLessThan(0.1);
  });

  test('thins frames out for long cycles alone, and says so', () => {
    const vectors = makeVectors(40, () => 1);
    expect(buildFlowBand(vectors, 10).stride).toBe(1);
    const long = buildFlowBand(vectors, 80);
    expect([long.stride, long.frameCount, long.rateHz]).toEqual([5, 120, 3]);
  });
});
