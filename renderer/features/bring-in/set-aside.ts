import type { AsideReason } from '../../../src-core/contract/aside-reason.ts';
import type { ClipView, LessonView } from '../../../src-core/contract/lesson-view.ts';
import type { JournalAct } from '../../../src-core/marking/journal-event.ts';

/** Clips that take no part, by reason; nothing of them is thrown away. */
export interface AsideGroup {
  readonly reason: AsideReason;
  readonly clips: readonly AsideClip[];
}

/** A clip set aside, and how it comes back; null: there is nothing to take back. */
export interface AsideClip {
  readonly clip: ClipView;
  readonly takeIn: readonly JournalAct[] | null;
}

/** In the order of how often a teacher asks after them. What waits for the teacher is not among them. */
const ORDER: readonly AsideReason[] = [
  'other-period',
  'by-teacher',
  'edited-copy',
  'clock-film',
  'unreadable',
];

/** What is set aside, grouped by reason; empty groups are left out. */
export function groupAside(view: LessonView): readonly AsideGroup[] {
  return ORDER.flatMap((reason): readonly AsideGroup[] => {
    const clips = view.clips.filter(({ aside }) => aside === reason);
    if (clips.length === 0) return [];
    return [{ reason, clips: clips.map((clip) => ({ clip, takeIn: findTakeIn(view, clip) })) }];
  });
}

function findTakeIn(view: LessonView, clip: ClipView): readonly JournalAct[] | null {
  if (clip.aside === 'by-teacher') return [{ kind: 'clip-placed', clip: clip.id, slot: null }];
  if (clip.aside !== 'other-period') return null;
  const flag = view.flags.find(({ flag: { code, clip: id } }) => code === 'outside-period' && id === clip.id);
  return flag ? [{ kind: 'flag-settled', flag: flag.key, settled: 'cleared', reason: null }] : null;
}
