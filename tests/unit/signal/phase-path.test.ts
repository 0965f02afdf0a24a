import { describe, expect, test } from 'vitest';
import { REPS_RULE } from '../../../src-core/evidence/reps-rule.ts';
import { findMainDirection, projectFrames } from '../../../src-core/signal/main-direction.ts';
import { matchPhases } from '../../../src-core/signal/phase-match.ts';
import { findPhasePath } from '../../../src-core/signal/phase-path.ts';
import { buildPhaseTemplate } from '../../../src-core/signal/phase-template.ts';
import { makeVectors } from './made-vectors.ts';

const TURN = 2 * Math.PI;

/** A movement with cycles of the given lengths from 2 s on; still outside them. */
function makeCycles(lengths: readonly number[], tail = 2) {
  const starts: number[] = [];
  let end = 2;
  for (const length of lengths) {
    starts.push(end);
    end += length;
  }
  const phaseAt = (second: number) => {
    const index = starts.findLastIndex((start) => start <= second);
    const start = starts[index];
    return start === undefined || second >= end
      ? Number.NaN
      : index + (second - start) / (lengths[index] ?? 1);
  };
  const vectors = makeVectors(end + tail, (second, place) => {
    const phase = phaseAt(second);
    return Number.isNaN(phase) ? 0 : Math.sin(TURN * phase + place) + 0.3 * Math.cos(2 * TURN * phase);
  });
  return { vectors, phaseAt };
}

/** Follows the movement from a template of the third and fourth cycle alone. */
function follow(lengths: readonly number[]) {
  const { vectors, phaseAt } = makeCycles(lengths);
  const known = Float64Array.from({ length: vectors.frameCount }, (_, frame) => {
    const phase = phaseAt(frame / vectors.rateHz);
    return phase >= 2 && phase < 4 ? phase : Number.NaN;
  });
  const template = buildPhaseTemplate(vectors, known, 32);
  const match = matchPhases(vectors, template, known, REPS_RULE.match);
  const mean = lengths.reduce((sum, length) => sum + length, 0) / lengths.length;
  const expected = new Float64Array(vectors.frameCount).fill(mean * vectors.rateHz);
  return { vectors, template, path: findPhasePath(match, expected, REPS_RULE.track) };
}

/** Cycles gone through in all. */
function countCycles({ phases }: { readonly phases: Float64Array }): number {
  let sum = 0;
  for (let frame = 1; frame < phases.length; frame++) {
    const step = (phases[frame] ?? 0) - (phases[frame - 1] ?? 0);
    if (step > 0) sum += step;
  }
  return sum;
}

describe('a movement', () => {
  test('is followed through all its cycles', () => {
    expect(countCycles(follow([2, 2, 2, 2, 2, 2]).path)).toBeCloseTo(6, 0);
  });

  test('is followed while its pace changes by half', () => {
    expect(countCycles(follow([2.4, 2.2, 2, 1.8, 1.7, 1.5, 1.4]).path)).toBeCloseTo(7, 0);
  });

  test('rests before it begins and after it ends', () => {
    const { phases } = follow([2, 2, 2, 2]).path;
    expect([...phases.subarray(0, 24)].every(Number.isNaN)).toBe(true);
    expect([...phases.subarray(phases.length - 24)].every(Number.isNaN)).toBe(true);
    expect([...phases.subarray(36, 140)].some(Number.isNaN)).toBe(false);
  });

  test('gains about 1 a frame where it fits, and nothing at rest', () => {
    const { gains } = follow([2, 2, 2, 2]).path;
    const middle = gains.subarray(40, 130);
    expect(middle.reduce((sum, gain) => sum + gain, 0) / middle.length).toBeGreaterThan(0.9);
    expect(gains[5]).toBe(0);
  });

  test('is one line that goes up and down with it', () => {
    const { vectors, template } = follow([2, 2, 2, 2]);
    const line = projectFrames(vectors, findMainDirection(template));
    expect(Math.max(...line.map(Math.abs))).toBeCloseTo(1, 6);
    expect(Math.abs(line[10] ?? 1)).toBeLessThan(0.3);
  });
});

describe('a template', () => {
  test('explains no frame by the frame itself', () => {
    const noise = makeVectors(8, () => 0, 1);
    const phases = Float64Array.from({ length: noise.frameCount }, (_, frame) => frame / 30);
    const template = buildPhaseTemplate(noise, phases, 30);
    const mean = (known: Float64Array) => {
      const { gains, bins } = matchPhases(noise, template, known, { ...REPS_RULE.match, busyShare: 0 });
      let sum = 0;
      for (let frame = 0; frame < noise.frameCount; frame++) sum += gains[frame * bins + (frame % 30)] ?? 0;
      return sum / noise.frameCount;
    };
    const unknown = new Float64Array(noise.frameCount).fill(Number.NaN);
    expect(mean(unknown)).toBeGreaterThan(0.8);
    expect(mean(phases)).toBeLessThan(0.3);
  });
});
