import { describe, expect, test } from 'vitest';
import { measureCycleAgreement } from '../../../src-core/signal/cycle-agreement.ts';
import type { FlowVectors } from '../../../src-core/signal/flow-vectors.ts';

const COLUMNS = 6;
const CYCLE = 12;

/** Three rows of six columns, cell by cell flow to the right and down given for a frame and a column. */
function film(frames: number, at: (frame: number, column: number) => readonly [number, number]): FlowVectors {
  const size = 2 * COLUMNS * 3;
  const values = new Float32Array(frames * size);
  for (let frame = 0; frame < frames; frame++) {
    for (let cell = 0; cell < size / 2; cell++) {
      values.set(at(frame, cell % COLUMNS), frame * size + 2 * cell);
    }
  }
  return { rateHz: 15, frameCount: frames, size, values };
}

const measureAll = (...film: Parameters<typeof measureCycleAgreement>) => measureCycleAgreement(...film).all;

const wave = (frame: number) => Math.sin((2 * Math.PI * frame) / CYCLE);
const countPhases = (frames: number, cycle: number) =>
  Float64Array.from({ length: frames }, (_, frame) => frame / cycle);

describe('frames a cycle apart', () => {
  test('are one where everybody does the same again', () => {
    const cells = film(60, (frame, column) => [column < 2 ? wave(frame) : 0, wave(frame + 2)]);
    const { once, twice } = measureAll(cells, COLUMNS, countPhases(60, CYCLE));
    expect(once).toBeCloseTo(1, 3);
    expect(twice).toBeCloseTo(1, 3);
  });

  test('are opposed after half a swing, and one after two halves', () => {
    const cells = film(60, (frame) => [wave(frame), 0]);
    const { once, twice } = measureAll(cells, COLUMNS, countPhases(60, CYCLE / 2));
    expect(once).toBeCloseTo(-1, 3);
    expect(twice).toBeCloseTo(1, 3);
  });

  test('are mirrored where one side and the other take turns', () => {
    // A kick up and outwards, left of the middle, then right of it.
    const kick = (frame: number, column: number): [number, number] => {
      const isLeft = Math.floor(frame / CYCLE) % 2 === 0;
      if (isLeft ? column !== 1 : column !== 4) return [0, 0];
      return [isLeft ? -wave(frame) : wave(frame), 2 * wave(frame)];
    };
    const { once, mirrored, twice } = measureAll(film(96, kick), COLUMNS, countPhases(96, CYCLE));
    expect(once).toBeCloseTo(0, 3);
    expect(mirrored).toBeCloseTo(1, 3);
    expect(twice).toBeCloseTo(1, 3);
  });

  test('agree at best where nobody walks through', () => {
    // Somebody before the camera in the third cycle of five.
    const isPassed = (frame: number) => frame >= 2 * CYCLE && frame < 3 * CYCLE;
    const cells = film(5 * CYCLE, (frame) => (isPassed(frame) ? [3, 0] : [0, wave(frame)]));
    const { all, best } = measureCycleAgreement(cells, COLUMNS, countPhases(5 * CYCLE, CYCLE));
    expect(all.once).toBeLessThan(0.3);
    expect(best.once).toBeCloseTo(1, 3);
    expect(best.twice).toBeCloseTo(1, 3);
  });

  test('do not agree at best in half of a movement that swings on', () => {
    const cells = film(60, (frame) => [wave(frame), 0]);
    const { best } = measureCycleAgreement(cells, COLUMNS, countPhases(60, CYCLE / 2));
    expect(best.once).toBeLessThan(-0.9);
    expect(best.twice).toBeCloseTo(1, 3);
  });

  test('are looked for within a run alone', () => {
    const phases = countPhases(40, CYCLE).map((phase, frame) => (frame < 20 ? phase : phase - 20 / CYCLE));
    const cells = film(40, (frame) => [frame < 20 ? 1 : 0, frame < 20 ? 0 : 1]);
    expect(measureAll(cells, COLUMNS, phases)).toMatchObject({ once: expect.closeTo(1, 3), twice: 0 });
  });

  test('agree about nothing where nothing was followed', () => {
    const phases = new Float64Array(30).fill(Number.NaN);
    const { once, twice } = measureAll(
      film(30, () => [1, 1]),
      COLUMNS,
      phases,
    );
    expect([once, twice]).toEqual([0, 0]);
  });
});
