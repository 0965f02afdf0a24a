import type { ClipView } from '../../../src-core/contract/lesson-view.ts';
import type { Plan } from '../../../src-core/lesson/plan.ts';
import type { CriterionMark } from '../../../src-core/marking/clip-score.ts';
import type { JournalAct } from '../../../src-core/marking/journal-event.ts';

/** One criterion of the rubric and how the clip stands with it. */
export interface CriterionLine extends CriterionMark {
  readonly label: string;
  readonly checks: Plan['rubric']['clip'][number]['checks'];
}

/** What a clip earns as it stands. */
export interface Earnings {
  readonly points: number;
  readonly max: number;
  /** Labels of criteria without any answer: until they have one, what it earns is open. */
  readonly open: readonly string[];
  /** Labels of criteria that are not met. */
  readonly unmet: readonly string[];
  readonly isInked: boolean;
  /** The order rule takes its points, whatever its criteria say. */
  readonly isLost: boolean;
}

/** The criteria of a clip with their labels, in the rubric's order; empty where it counts for no slot. */
export function listCriteria(plan: Plan, clip: ClipView): readonly CriterionLine[] {
  return plan.rubric.clip.flatMap(({ code, label, checks }): CriterionLine[] => {
    const mark = clip.criteria?.find(({ criterion }) => criterion === code);
    return mark ? [{ ...mark, label, checks }] : [];
  });
}

/** What a clip will earn and why not more; `max` is the most that any clip earns. */
export function getEarnings(
  lines: readonly CriterionLine[],
  { points, max, isLost }: { readonly points: number; readonly max: number; readonly isLost: boolean },
): Earnings {
  return {
    points,
    max,
    isLost,
    open: lines.filter(({ shown }) => shown === null).map(({ label }) => label),
    unmet: lines.filter(({ shown }) => shown === false).map(({ label }) => label),
    isInked: lines.every(({ confirmed }) => confirmed),
  };
}

/** What confirming a clip decides: every answer as it is shown. Null where one is still open. */
export function findConfirmation(clip: ClipView): JournalAct | null {
  const marks = clip.criteria ?? [];
  if (marks.length === 0 || marks.some(({ shown }) => shown === null)) return null;
  return confirm(clip, marks, false);
}

/** The same with one answer to whatever has none; null where the clip counts for nothing. */
export function findRestAnswered(clip: ClipView, rest: boolean): JournalAct | null {
  const marks = clip.criteria ?? [];
  return marks.length === 0 ? null : confirm(clip, marks, rest);
}

function confirm(clip: ClipView, marks: readonly CriterionMark[], rest: boolean): JournalAct {
  const answers = Object.fromEntries(marks.map(({ criterion, shown }) => [criterion, shown ?? rest]));
  return { kind: 'clip-confirmed', clip: clip.id, answers };
}

/** Whether confirming would say nothing new: all is inked. */
export function isInked(clip: ClipView): boolean {
  return clip.criteria?.every(({ confirmed }) => confirmed) ?? false;
}

/** The other answer to a criterion, the teacher's own: what is shown turned round, an open one answered Yes. */
export function flip(clip: ClipView, mark: CriterionMark): JournalAct {
  return {
    kind: 'criterion-marked',
    clip: clip.id,
    criterion: mark.criterion,
    met: mark.shown === null ? true : !mark.shown,
  };
}
