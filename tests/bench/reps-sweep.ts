import { createRepsFilm } from '../../fixtures/sweep/reps-film.ts';
import { MOVEMENT_KINDS } from '../../fixtures/sweep/reps-movement.ts';
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
  /** For each rep found, how far its still lies from the nearest turn of the movement, in cycles; see {@link findTurnsApart}. */
  readonly turnsApart: readonly number[];
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
  const { count, timesSeconds } = findReps(readSceneMotion(scene), options);
  return { scene, found: count, turnsApart: findTurnsApart(scene, timesSeconds) };
}

/**
 * Distances of moments to the nearest turn: these movements turn where their cycle ends and in its middle. None for those
 * whose sides take turns, and for groups that do not share one phase.
 */
function findTurnsApart({ beat, family }: RepsScene, timesSeconds: readonly number[]): number[] {
  const kind = MOVEMENT_KINDS.find(({ name }) => name === beat?.movement);
  if (!beat || kind?.hasSides !== false || family === 'phases') return [];
  return timesSeconds.flatMap((at) => {
    const cycle = beat.cycles.find(({ from, to }) => at >= from && at < to);
    if (!cycle) return [];
    const phase = (at - cycle.from) / (cycle.to - cycle.from);
    return [Math.min(phase, Math.abs(phase - 0.5), 1 - phase)];
  });
}

/** A still this near to a turn shows it, in cycles. */
const AT_TURN = 0.1;

/** Figures of a sweep: errors over scenes with reps, and the share of the others in which none were found. */
export interface SweepFigures extends CountErrors {
  readonly none: number;
  /** Share of the stills that lie within a tenth of a cycle of a turn; by chance it would be 0.4. */
  readonly atTurn: number;
}

/** Sums a sweep up; figures without scenes to stand on are NaN. */
export function summariseCounts(counts: readonly SceneCount[]): SweepFigures {
  const pairs = counts.flatMap(({ scene, found }) =>
    scene.count === null ? [] : [{ found, truth: scene.count }],
  );
  const still = counts.filter(({ scene }) => scene.count === null);
  const apart = counts.flatMap(({ turnsApart }) => turnsApart);
  return {
    ...measureCounts(pairs),
    none: still.filter(({ found }) => found === null).length / still.length,
    atTurn: apart.filter((one) => one <= AT_TURN).length / apart.length,
  };
}
