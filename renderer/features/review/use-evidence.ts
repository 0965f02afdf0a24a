import { useEffect, useMemo, useReducer } from 'react';
import type { DeskClient } from '../../../src-core/contract/desk-client.ts';
import type { EvidenceView } from '../../../src-core/contract/evidence-view.ts';
import type { ClipView, LessonView } from '../../../src-core/contract/lesson-view.ts';
import { afterPaint } from '../../ui/after-paint.ts';
import { drawClip } from './drawn-clip.ts';
import { type EvidenceShelf, openEvidenceShelf } from './evidence-shelf.ts';

/** One shelf for as long as Review is shown. */
export function useEvidenceShelf(client: DeskClient): EvidenceShelf {
  return useMemo(() => openEvidenceShelf(client), [client]);
}

/**
 * What is drawn beside the clip on the desk; null until it is here. The next clip's is made ready meanwhile, so that
 * it stands with the clip.
 */
export function useEvidence(
  shelf: EvidenceShelf,
  lesson: LessonView,
  clip: ClipView,
  next: ClipView | null,
): EvidenceView | null {
  const [, showAnew] = useReducer((turn: number) => turn + 1, 0);
  useEffect(() => {
    let isWanted = true;
    const fetch = () =>
      void shelf.fetch(lesson, clip, true).then((isNew) => {
        if (!isWanted) return;
        if (isNew) showAnew();
        if (next) void shelf.fetch(lesson, next, false).then(() => drawClip(next, shelf.find(next)));
      });
    // What stands already is painted before more is asked for.
    const callOff = shelf.find(clip) ? afterPaint(fetch) : fetch();
    return () => {
      isWanted = false;
      callOff?.();
    };
  }, [shelf, lesson, clip, next]);
  return shelf.find(clip);
}

/** The same for clips side by side, in their order. */
export function useComparedEvidence(
  shelf: EvidenceShelf,
  lesson: LessonView,
  clips: readonly ClipView[],
): readonly (EvidenceView | null)[] {
  const [, showAnew] = useReducer((turn: number) => turn + 1, 0);
  useEffect(() => {
    let isWanted = true;
    for (const clip of clips) {
      void shelf.fetch(lesson, clip, false).then((isNew) => isNew && isWanted && showAnew());
    }
    return () => {
      isWanted = false;
    };
  }, [shelf, lesson, clips]);
  return clips.map((clip) => shelf.find(clip));
}
