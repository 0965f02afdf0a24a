import { STEP } from './camera-step.ts';
import type { LumaLevel } from './luma-level.ts';
import { createRegistration, measureMisfit, type Registration, registerFrames } from './register-frames.ts';
import { warpLuma } from './warp-luma.ts';

/** How often each level of a pyramid is gone over, from fine to coarse. */
const ROUNDS = [2, 5, 4];
/** How often the finest is gone over from rest; more only gives those who move time to carry the camera along. */
const ROUNDS_FROM_REST = 2;
/** A camera found to move by less than this, in pixels, stands as good as still. */
const STILL_PIXELS = 0.1;

/** Levels of the pyramids that a camera's step is found by. */
export const PYRAMID_LEVELS = ROUNDS.length;

/** Space to look for the camera's step in, made once for pictures of one size. */
export interface CameraSearch {
  readonly inward: Registration;
  readonly fromRest: Registration;
}

/** Space for pictures of up to `area` pixels. */
export function createCameraSearch(area: number): CameraSearch {
  return { inward: createRegistration(area), fromRest: createRegistration(area) };
}

/**
 * How the camera moved from one picture to the next, both given as pyramids from fine to coarse; `warped` is then the
 * next picture with that step taken out.
 *
 * Only the coarse levels see long steps. But in them a group that moves sideways together may be most of what stands
 * out, and carries the search along. So the finest is registered from rest as well, and of the two steps the one is
 * kept that leaves more of the picture still, region by region.
 */
export function findCameraStep(
  before: readonly LumaLevel[],
  after: readonly LumaLevel[],
  { inward, fromRest }: CameraSearch,
): Registration {
  const finest = before[0];
  const next = after[0];
  if (!finest || !next) throw new RangeError('a pyramid without levels');
  inward.step.fill(0);
  for (let level = PYRAMID_LEVELS - 1; level >= 0; level--) {
    const from = before[level];
    const to = after[level];
    if (from && to) registerFrames(from, to, inward, ROUNDS[level] ?? 0);
  }
  warpLuma(next, inward.step, inward.warped);
  if (measurePixels(inward, finest.width) < STILL_PIXELS) return inward;
  fromRest.step.fill(0);
  registerFrames(finest, next, fromRest, ROUNDS_FROM_REST);
  warpLuma(next, fromRest.step, fromRest.warped);
  const width = Math.min(inward.width, fromRest.width);
  return measureMisfit(finest, fromRest, width) < measureMisfit(finest, inward, width) ? fromRest : inward;
}

function measurePixels({ step }: Registration, width: number): number {
  return (Math.hypot(step[STEP.moveX] as number, step[STEP.moveY] as number) * width) / 2;
}
