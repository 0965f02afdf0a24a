import type { MotionSeries } from '../signal/motion-series.ts';

/** How the tablet itself moved while it filmed. */
export interface CameraMotion {
  /** Mean speed of the background, in picture widths a second; near 0 on a cone, above 0.1 in a pan. */
  readonly widthsPerSecond: number;
}

/** Steps are added up over so long before their length is taken, so that a cone's tremble cancels out. */
const NET_SECONDS = 0.4;

/** Sums up the camera's own steps over the clip. */
export function describeCamera({ camera, frameCount, rateHz, width }: MotionSeries): CameraMotion {
  const frames = Math.max(1, Math.round(NET_SECONDS * rateHz));
  let path = 0;
  let windows = 0;
  for (let from = 1; from + frames <= frameCount; from += frames) {
    let [right, down] = [0, 0];
    for (let frame = from; frame < from + frames; frame++) {
      right += camera[frame * 4] ?? 0;
      down += camera[frame * 4 + 1] ?? 0;
    }
    path += Math.hypot(right, down);
    windows += 1;
  }
  return { widthsPerSecond: windows === 0 ? 0 : (path / windows / width) * (rateHz / frames) };
}
