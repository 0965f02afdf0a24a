import type { MotionSeries } from '../signal/motion-series.ts';
import type { CameraMotion } from './camera-motion.ts';
import { describeCamera } from './camera-motion.ts';
import { findReps } from './reps.ts';
import type { RepsFinding, RepsOptions } from './reps-finding.ts';
import { measureUnison } from './unison.ts';
import type { UnisonFinding, UnisonOptions } from './unison-finding.ts';

/** How a clip's movement is to be read: the exercise's counting rule and tempo, and the tolerance for together. */
export interface MovementOptions {
  readonly reps: RepsOptions;
  readonly unison: UnisonOptions;
}

/** Everything that is read from a clip's motion; proposals rest on it, the page draws it. */
export interface ClipMovement {
  readonly reps: RepsFinding;
  /** Null: nothing periodic, or one lane alone. */
  readonly unison: UnisonFinding | null;
  readonly camera: CameraMotion;
}

/** The same movement with its unison measured anew, as for performers that the teacher has named; reps do not depend on them. */
export function remeasureUnison(
  motion: MotionSeries,
  known: ClipMovement,
  options: UnisonOptions,
): ClipMovement {
  const unison = known.reps.count === null ? null : measureUnison(motion, known.reps, options);
  return { ...known, unison };
}

/** Reps, unison and camera motion of one clip. */
export function readMovement(motion: MotionSeries, options: MovementOptions): ClipMovement {
  const reps = findReps(motion, options.reps);
  const unison = reps.count === null ? null : measureUnison(motion, reps, options.unison);
  return { reps, unison, camera: describeCamera(motion) };
}
