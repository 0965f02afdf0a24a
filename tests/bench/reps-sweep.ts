import { createRepsFilm } from '../../fixtures/sweep/reps-film.ts';
import type { RepsScene } from '../../fixtures/sweep/reps-scene.ts';
import { findReps } from '../../src-core/evidence/reps.ts';
import { createMotionReader } from '../../src-core/signal/motion-reader.ts';
import type { MotionSeries } from '../../src-core/signal/motion-series.ts';
import type { CountErrors } from './count-metrics.ts';
import { measureCounts } from './count-metrics.ts';

/** What was counted in a scene. */
export interface SceneCount {
  readonly scene: RepsScene;
  /** Null: none found. */
  readonly found: number | null;
}

/** Films a scene in memory and reads its motion. */
export function readSceneMotion(scene: RepsScene): MotionSeries {
  const film = createRepsFilm(scene);
  const reader = createMotionReader(film);
  for (let index = 0; index < film.frameCount; index++) reader.push(film.drawLuma(index));
  return reader.finish();
}

/** Counts a scene as its plan would have it counted. */
export function countScene(scene: RepsScene): SceneCount {
  const options = { counting: scene.counting, cycleSeconds: scene.tempo };
  return { scene, found: findReps(readSceneMotion(scene), options).count };
}

/** Figures of a sweep: errors over scenes with reps, and the share of the others in which none were found. */
export interface SweepFigures extends CountErrors {
  readonly none: number;
}

/** Sums a sweep up; figures without scenes to stand on are NaN. */
export function summariseCounts(counts: readonly SceneCount[]): SweepFigures {
  const pairs = counts.flatMap(({ scene, found }) =>
    scene.count === null ? [] : [{ found, truth: scene.count }],
  );
  const still = counts.filter(({ scene }) => scene.count === null);
  return { ...measureCounts(pairs), none: still.filter(({ found }) => found === null).length / still.length };
}
