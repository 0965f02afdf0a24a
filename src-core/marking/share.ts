import type { Plan } from '../lesson/plan.ts';

/** Sums of points are kept to a millionth, so that a third counted three times is one. */
const POINT_STEPS = 1_000_000;

/** Points without the dust that adding decimals leaves: rounded to a millionth. */
export function roundPoints(points: number): number {
  return Math.round(points * POINT_STEPS) / POINT_STEPS;
}

/** Points kept between 0 and a maximum. */
export function boundPoints(points: number, max: number): number {
  return Math.min(Math.max(points, 0), max);
}

/** Share of the points in whole per cent, halves rounded up: 8 of 11 is 73. Null where nothing could be earned. */
export function findPercent(points: number, max: number): number | null {
  // 14.5 must not fall to 14 because 0.145 × 100 is a hair less in binary.
  return max > 0 ? Math.floor((points * 100) / max + 0.5 + 1e-9) : null;
}

/**
 * The mark of the first step that a share reaches, best first; below the last step, the last mark. Measured by
 * the whole per cent that is shown, so that nobody reads 80 % and misses the step at 80. Null without a scale.
 */
export function findScaleMark(percent: number | null, scale: Plan['scale']): string | null {
  if (percent === null) return null;
  const reached = scale.find(({ fromPercent }) => percent >= fromPercent);
  return (reached ?? scale.at(-1))?.mark ?? null;
}
