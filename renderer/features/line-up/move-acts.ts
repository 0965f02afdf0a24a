import type { ClipView } from '../../../src-core/contract/lesson-view.ts';
import type { SlotIndex, SquadCode } from '../../../src-core/lesson/plan.ts';
import type { JournalAct } from '../../../src-core/marking/journal-event.ts';

/** What puts a clip into a slot of a squad, or beside its slots (null: `slot` stays as it is). Empty: it is there. */
export function buildMoveActs(
  clip: ClipView,
  squad: SquadCode,
  slot: SlotIndex | null,
): readonly JournalAct[] {
  const isSame = clip.squad === squad && clip.aside === null;
  const isInSlot = isSame && clip.assignment?.role === 'counts' && clip.assignment.slot === slot;
  return [
    ...(clip.squad === squad ? [] : [{ kind: 'clip-moved', clip: clip.id, squad } as const]),
    ...(slot === null || isInSlot ? [] : [{ kind: 'clip-placed', clip: clip.id, slot } as const]),
  ];
}
