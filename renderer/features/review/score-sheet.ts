import type { ClipView } from '../../../src-core/contract/lesson-view.ts';
import type { Plan } from '../../../src-core/lesson/plan.ts';
import type { CriterionMark } from '../../../src-core/marking/clip-score.ts';
import type { JournalAct } from '../../../src-core/marking/journal-event.ts';
import type { Proposal } from '../../../src-core/marking/proposal.ts';

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

/**
 * What confirming a clip decides: every answer as it is shown. Null where one is still open. `seen`: the proposals that
 * the teacher has had time to see, where newer ones have only just come.
 */
export function findConfirmation(
  clip: ClipView,
  seen: readonly Proposal[] = clip.proposals,
): JournalAct | null {
  const answers = listSeen(clip, seen);
  if (answers.length === 0 || answers.some(([, met]) => met === null)) return null;
  return confirm(clip, answers, false);
}

/** The same with one answer to whatever has none; null where the clip counts for nothing. */
export function findRestAnswered(
  clip: ClipView,
  rest: boolean,
  seen: readonly Proposal[] = clip.proposals,
): JournalAct | null {
  const answers = listSeen(clip, seen);
  return answers.length === 0 ? null : confirm(clip, answers, rest);
}

type SeenAnswer = readonly [criterion: string, met: boolean | null];

function listSeen({ criteria }: ClipView, seen: readonly Proposal[]): readonly SeenAnswer[] {
  return (criteria ?? []).map(({ criterion, decided }) => {
    const proposed = seen.find((proposal) => proposal.criterion === criterion)?.met ?? null;
    return [criterion, decided ?? proposed];
  });
}

function confirm(clip: ClipView, answers: readonly SeenAnswer[], rest: boolean): JournalAct {
  const all = Object.fromEntries(answers.map(([criterion, met]) => [criterion, met ?? rest]));
  return { kind: 'clip-confirmed', clip: clip.id, answers: all };
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
