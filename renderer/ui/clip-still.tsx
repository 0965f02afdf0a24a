import { useState } from 'react';
import type { LessonId } from '../../src-core/contract/desk-view.ts';
import type { ClipView } from '../../src-core/contract/lesson-view.ts';
import { getFilmUrl, getStillUrl } from '../client/media-urls.ts';

/** Where in a clip a picture says most: the card is held up at the start, the exercise is in the middle. */
const SHARE_OF_CLIP = 0.4;

/** One picture of a clip; hatched until it is there, and where it cannot be had. */
export function ClipStill({
  lesson,
  clip,
  name,
  isThere,
  atSeconds,
}: {
  readonly lesson: LessonId;
  readonly clip: Pick<ClipView, 'id' | 'durationSeconds' | 'holds'>;
  readonly name: string;
  /** False: no pictures can be cut on this machine. */
  readonly isThere: boolean;
  readonly atSeconds?: number;
}) {
  const [isBroken, setBroken] = useState(false);
  const at = atSeconds ?? (clip.durationSeconds ?? 0) * SHARE_OF_CLIP;
  const source = clip.holds === 'still' ? getFilmUrl(lesson, clip.id) : getStillUrl(lesson, clip.id, at, 180);
  return (
    <span className="still hatch">
      {isThere && !isBroken && (
        <img src={source} alt={name} loading="lazy" decoding="async" onError={() => setBroken(true)} />
      )}
    </span>
  );
}
