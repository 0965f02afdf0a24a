import type { DeskClient } from '../../../src-core/contract/desk-client.ts';
import type { EvidenceView } from '../../../src-core/contract/evidence-view.ts';
import type { ClipView, LessonView } from '../../../src-core/contract/lesson-view.ts';

/** What is drawn beside films, for the clip on the desk and those around it. */
export interface EvidenceShelf {
  /** What is here of a clip; of before its latest change where the newest is on its way; null: nothing yet. */
  readonly find: (clip: ClipView) => EvidenceView | null;
  /**
   * Asks for a clip's evidence where it is not here. `isOpened`: the teacher looks at it now. True: there is something
   * new to be shown.
   */
  readonly fetch: (lesson: LessonView, clip: ClipView, isOpened: boolean) => Promise<boolean>;
}

/** Clips whose evidence is kept: the one on the desk, the next, and a few to go back to; some 100 kB each. */
const MOST_KEPT = 12;

interface Kept {
  readonly key: string;
  readonly evidence: EvidenceView;
}

/** A shelf with nothing on it yet; one a desk, so that a clip gone back to stands at once. */
export function openEvidenceShelf(client: DeskClient): EvidenceShelf {
  const kept = new Map<string, Kept>();
  const underWay = new Map<string, Promise<boolean>>();
  let first: string | null = null;
  const ask = async (lesson: LessonView, clip: ClipView, isOpened: boolean) => {
    const key = getKey(lesson, clip);
    const reply = await client.request('readEvidence', { lesson: lesson.lesson, clip: clip.id, isOpened });
    if (!reply.ok) return false;
    kept.delete(clip.id);
    kept.set(clip.id, { key, evidence: reply.value.evidence });
    const [oldest] = kept.keys();
    if (kept.size > MOST_KEPT && oldest !== undefined) kept.delete(oldest);
    return true;
  };
  return {
    find: (clip) => kept.get(clip.id)?.evidence ?? null,
    fetch: (lesson, clip, isOpened) => {
      const key = `${getKey(lesson, clip)} ${isOpened}`;
      const isHere = kept.get(clip.id)?.key === getKey(lesson, clip);
      // A clip that is still to be watched is asked for all the same when it comes onto the desk: that puts it first.
      const isToBeFirst = isOpened && clip.seen.watched === 'no' && first !== clip.id;
      if (isOpened) first = clip.id;
      if (isHere && !isToBeFirst) return Promise.resolve(false);
      const asking = underWay.get(key) ?? ask(lesson, clip, isOpened).finally(() => underWay.delete(key));
      underWay.set(key, asking);
      return asking;
    },
  };
}

/** Changes whenever a clip's evidence may have: it was watched, or is read by another station's rule. */
function getKey({ planVersion }: LessonView, { id, seen, assignment }: ClipView): string {
  return JSON.stringify([planVersion, id, seen, assignment?.slot ?? null]);
}
