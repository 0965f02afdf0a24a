import { describe, expect, test } from 'vitest';
import { listRepsScenes } from '../../fixtures/sweep/reps-scenes.ts';
import { countScene, readSceneMotion, summariseCounts } from '../bench/reps-sweep.ts';

// Two scenes of every family, of a seed that no threshold was set on.
const SCENES = 46;
const SEED = 3;

describe('the filmed sweep', () => {
  test('is counted as well as it was', () => {
    const { mae, obo, exact, none } = summariseCounts(listRepsScenes(SCENES, SEED).map(countScene));
    expect(mae).toBeLessThanOrEqual(0.06);
    expect(obo).toBeGreaterThanOrEqual(0.94);
    expect(exact).toBeGreaterThanOrEqual(0.88);
    expect(none).toBeGreaterThanOrEqual(0.8);
  });

  test('shows the same frames whenever it is filmed', () => {
    const [scene] = listRepsScenes(1, SEED);
    if (!scene) throw new Error('the sweep has scenes');
    expect(readSceneMotion(scene)).toEqual(readSceneMotion(scene));
  });

  test('counts cycles of which at least half is seen', () => {
    for (const { beat, durationSeconds, count, counting } of listRepsScenes(SCENES, SEED)) {
      const middles = (beat?.cycles ?? []).map(({ from, to }) => (from + to) / 2);
      const seen = middles.filter((middle) => middle > 0 && middle < durationSeconds).length;
      if (beat === null) expect(count).toBeNull();
      else expect(count).toBe(seen * (counting === 'side' ? 2 : 1));
    }
  });
});
