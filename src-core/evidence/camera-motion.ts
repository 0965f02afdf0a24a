import type { MotionSeries } from '../signal/motion-series.ts';

/** How the tablet itself moved while it filmed. */
export interface CameraMotion {
  /** Mean speed of the background, in picture widths a second. 0 on a cone; a pan is above 0.1. */
  readonly widthsPerSecond: number;
  /** `still`: on a cone. `held`: in somebody's hands. `moving`: panned or carried about. */
  readonly kind: 'still' | 'held' | 'moving';
}

/** Where held begins and ends, in picture widths a second. Judgement on filmed shake: a cone's wobble stays below. */
const KIND_FROM = { held: 0.01, moving: 0.12 } as const;

/** Sums up the camera's own steps over the clip. */
export function describeCamera({ camera, frameCount, rateHz, width }: MotionSeries): CameraMotion {
  let path = 0;
  for (let frame = 1; frame < frameCount; frame++) {
    path += Math.hypot(camera[frame * 4] ?? 0, camera[frame * 4 + 1] ?? 0);
  }
  const widthsPerSecond = frameCount > 1 ? (path / (frameCount - 1) / width) * rateHz : 0;
  const { held, moving } = KIND_FROM;
  const kind = widthsPerSecond >= moving ? 'moving' : widthsPerSecond >= held ? 'held' : 'still';
  return { widthsPerSecond, kind };
}
