import type { SlotIndex, SquadCode } from '../lesson/plan.ts';
import { buildPupilSlips, buildSquadSlips, type Slip } from '../printing/slip.ts';
import type { GradedLesson } from './graded-lesson.ts';

export type { Slip } from '../printing/slip.ts';

/** Slips of a lesson as it stands, for squads or for pupils. */
export function draftSlips(graded: GradedLesson, kind: 'squads' | 'pupils'): readonly Slip[] {
  const input = {
    plan: graded.lesson.plan,
    score: graded.score,
    allowedGaps: findAllowedGaps(graded),
  };
  return kind === 'squads' ? buildSquadSlips(input) : buildPupilSlips(input);
}

/** Missing clips that the teacher has cleared: they were allowed, and nobody is told to film them next time. */
function findAllowedGaps({ flags }: GradedLesson): ReadonlyMap<SquadCode, ReadonlySet<SlotIndex>> {
  const gaps = new Map<SquadCode, Set<SlotIndex>>();
  for (const { flag, answer } of flags) {
    if (flag.code !== 'missing' || answer?.settled !== 'cleared') continue;
    const own = gaps.get(flag.squad) ?? new Set();
    gaps.set(flag.squad, own.add(flag.slot));
  }
  return gaps;
}
