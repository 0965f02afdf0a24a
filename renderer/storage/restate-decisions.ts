import type { ClipView, LessonView } from '../../src-core/contract/lesson-view.ts';
import type { JournalDecision } from '../../src-core/marking/journal-event.ts';
import type { PupilScore, SquadScore } from '../../src-core/marking/points.ts';

/**
 * What a view shows as decided, said once more as decisions, as far as points and flags depend on it: folding them
 * gives the marks of the view again. Where clips belong is left out; only the host can match anew.
 */
export function restateDecisions(view: LessonView): readonly JournalDecision[] {
  return [
    ...view.clips.flatMap(restateClip),
    ...view.flags.flatMap(({ key, answer }): JournalDecision[] =>
      answer ? [{ kind: 'flag-settled', flag: key, ...answer }] : [],
    ),
    ...view.squadScores.flatMap(restateSquad),
    ...view.pupilScores.flatMap(restatePupil),
  ];
}

function restateClip({ id, criteria, note }: ClipView): JournalDecision[] {
  const answers = (criteria ?? []).flatMap(({ criterion, decided }): JournalDecision[] =>
    decided === null ? [] : [{ kind: 'criterion-marked', clip: id, criterion, met: decided }],
  );
  return note === null ? answers : [...answers, { kind: 'clip-noted', clip: id, text: note }];
}

function restateSquad({ squad, slots, criteria, override }: SquadScore): JournalDecision[] {
  const points = criteria.flatMap(({ criterion, decided }): JournalDecision[] =>
    decided === null ? [] : [{ kind: 'squad-marked', squad, criterion, points: decided }],
  );
  const ofClips = slots.flatMap((slot): JournalDecision[] =>
    slot.override && slot.clip
      ? [{ kind: 'points-overridden', of: { type: 'clip', clip: slot.clip.clip }, ...slot.override }]
      : [],
  );
  const ofSquad: JournalDecision[] = override
    ? [{ kind: 'points-overridden', of: { type: 'squad', squad }, ...override }]
    : [];
  return [...points, ...ofClips, ...ofSquad];
}

function restatePupil({ pupil, attendance, override }: PupilScore): JournalDecision[] {
  const there: JournalDecision = { kind: 'attendance-set', pupil: pupil.id, ...attendance };
  return override
    ? [there, { kind: 'points-overridden', of: { type: 'pupil', pupil: pupil.id }, ...override }]
    : [there];
}
