import { useEffect, useMemo, useReducer } from 'react';
import type { DeskClient } from '../../../src-core/contract/desk-client.ts';
import type { EvidenceView } from '../../../src-core/contract/evidence-view.ts';
import type { ClipView, LessonView } from '../../../src-core/contract/lesson-view.ts';
import { openEvidenceShelf } from './evidence-shelf.ts';

/**
 * What is drawn beside the clip on the desk; null until it is here. The next clip's is made ready meanwhile, so that
 * it stands with the clip.
 */
export function useEvidence(
  client: DeskClient,
  lesson: LessonView,
  clip: ClipView,
  next: ClipView | null,
): EvidenceView | null {
  const shelf = useMemo(() => openEvidenceShelf(client), [client]);
  const [, showAnew] = useReducer((turn: number) => turn + 1, 0);
  useEffect(() => {
    let isWanted = true;
    void shelf.fetch(lesson, clip, true).then((isNew) => {
      if (!isWanted) return;
      if (isNew) showAnew();
      if (next) void shelf.fetch(lesson, next, false);
    });
    return () => {
      isWanted = false;
    };
  }, [shelf, lesson, clip, next]);
  return shelf.find(lesson, clip);
}
