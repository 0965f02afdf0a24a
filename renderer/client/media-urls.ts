import type { LessonId } from '../../src-core/contract/desk-view.ts';
import type { ClipId } from '../../src-core/matching/observation.ts';
import type { Seconds } from '../../src-core/platform/units.ts';

/** The clip as it was filmed, for a `<video>`; a still picture's own bytes where the clip is one. Seeks by range. */
export function getFilmUrl(lesson: LessonId, clip: ClipId): string {
  return `/media/${lesson}/${clip}/film`;
}

/** The film made for windows that cannot decode the clip; there once `prepareProxy` has succeeded. */
export function getProxyUrl(lesson: LessonId, clip: ClipId): string {
  return `/media/${lesson}/${clip}/proxy`;
}

/** One picture of a clip as JPEG, `height` pixels high (48 to 1080); made on first asking and kept. */
export function getStillUrl(lesson: LessonId, clip: ClipId, atSeconds: Seconds, height: number): string {
  return `/media/${lesson}/${clip}/still?ms=${Math.round(atSeconds * 1000)}&height=${Math.round(height)}`;
}
