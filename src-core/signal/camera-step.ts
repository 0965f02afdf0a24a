/**
 * How one picture lies on another: a point `(x, y)` from the first one's middle, in half widths of the picture, is seen
 * in the second at `(x + moveX + zoom·x − turn·y, y + moveY + zoom·y + turn·x)`; brightness there is
 * `luma × (1 + gain) + offset`. Six numbers in the order of {@link STEP}.
 */
export type CameraStep = Float64Array;

/** Places of the numbers in a {@link CameraStep}. */
export const STEP = { moveX: 0, moveY: 1, zoom: 2, turn: 3, gain: 4, offset: 5 } as const;

/** How many numbers a {@link CameraStep} has. */
export const STEP_SIZE = 6;

/** The step of a camera that stands still. */
export function createCameraStep(): CameraStep {
  return new Float64Array(STEP_SIZE);
}
