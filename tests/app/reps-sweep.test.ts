import { isDeepStrictEqual } from 'node:util';
import { describe, expect, test } from 'vitest';
import { listRepsScenes } from '../../fixtures/sweep/reps-scenes.ts';
import { countScene, readSceneMotion, summariseCounts } from '../bench/reps-sweep.ts';

// Two scenes of every family, of a seed that no threshold was set on.
const SCENES = 46;
const SEED = 7;

describe('the filmed sweep', () => {
  test('is counted as well as it was', () => {
    const { mae, obo, exact, none } = summariseCounts(listRepsScenes(SCENES, SEED).map(countScene));
    expect(mae).toBeLessThanOrEqual(0.03);
    expect(obo).toBeGreaterThanOrEqual(0.97);
    expect(exact).toBeGreaterThanOrEqual(0.93);
    expect(none).toBeGreaterThanOrEqual(0.9);
  });

  test('shows the same frames whenever it is filmed', () => {
    const [scene] = listRepsScenes(1, SEED);
    if (!scene) throw new Error('the sweep has scenes');
    expect(isDeepStrictEqual(readSceneMotion(scene), readSceneMotion(scene))).toBe(true);
  });

  test('asks for the reps that are done before the clip ends, the first of them seen from its half on', () => {
    for (const { beat, durationSeconds, count, counting } of listRepsScenes(SCENES, SEED)) {
      const cycles = beat?.cycles ?? [];
      const sides = cycles.flatMap(({ from, to }) => [
        { from, to: (from + to) / 2 },
        { from: (from + to) / 2, to },
      ]);
      const done = (counting === 'side' ? sides : cycles).filter(
        ({ from, to }) => (from + to) / 2 >= 0 && to < durationSeconds + 0.001,
      );
      expect(count).toBe(beat === null ? null : done.length);
    }
  });
});
