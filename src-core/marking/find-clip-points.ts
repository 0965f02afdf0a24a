import type { ClipId } from '../matching/observation.ts';
import type { LessonScore } from './points.ts';

/** What a clip earns under the plan's rule, changes by hand included; null where it fills no slot. */
export function findClipPoints(score: LessonScore, clip: ClipId): number | null {
  for (const { sum } of score.squads) {
    const part = sum.parts.find((one) => one.code === 'slot' && one.clip === clip);
    if (part?.code !== 'slot') continue;
    const changes = sum.parts.filter((one) => one.code === 'override' && one.slot === part.slot);
    return changes.reduce((points, change) => points + change.points, part.points);
  }
  return null;
}
