import type { LessonView } from '../../src-core/contract/lesson-view.ts';
import { checkPlan } from '../../src-core/lesson/check-plan.ts';
import { checkReadiness } from '../../src-core/lesson/check-readiness.ts';
import { findLooseEnds } from '../../src-core/lesson/find-loose-ends.ts';
import type { WayCount } from '../text/way-count.ts';
import { listOpenFlags } from './flag-step.ts';
import type { Step } from './steps.ts';

/** What is left at each step, and whether it needs the teacher (accent). */
export type WayCounts = Readonly<Record<Step, { readonly left: WayCount; readonly needs: boolean }>>;

/** Counts what is left at every step of the way but the plan, which is checked only where it changed. */
export function countWay(view: LessonView): Omit<WayCounts, 'plan'> {
  return {
    'bring-in': countBringIn(view),
    'line-up': countLineUp(view),
    review: countReview(view),
    scores: countScores(view),
    'hand-in': {
      left: { kind: view.journal.handedIn.length > 0 ? 'handed-in' : 'not-yet' },
      needs: false,
    },
  };
}

type Count = WayCounts[Step];

/** Ends that keep pupils from their marks even when the lesson was taught. */
const OF_CLASS = new Set<string>(['plan-class-empty', 'plan-squad-empty']);

/**
 * As many as the checks on Plan name, of the class as well as of the plan. A lesson that has clips was taught: what would
 * only have gone wrong in class is over.
 */
export function countPlan({ plan, pupils }: Pick<LessonView, 'plan' | 'pupils'>, hasClips: boolean): Count {
  const ends = findLooseEnds(plan, pupils).filter(({ code }) => !hasClips || OF_CLASS.has(code));
  const amount = checkPlan(plan).length + ends.length + (hasClips ? 0 : checkReadiness(plan).length);
  return { left: amount > 0 ? { kind: 'problems', amount } : { kind: 'ready' }, needs: amount > 0 };
}

const NO_CLIPS: Count = { left: { kind: 'no-clips' }, needs: false };

/** Clips that nobody's folder names wait as well as flagged ones. */
function countToPlace(view: LessonView): number {
  const nobodys = view.clips.filter(({ aside }) => aside === 'nobodys').length;
  return nobodys + listOpenFlags(view, 'bring-in').length;
}

function countBringIn(view: LessonView): Count {
  const { state, done, total } = view.reading;
  if (state === 'stamps') return { left: { kind: 'reading', done, total }, needs: false };
  if (view.clips.length === 0) return NO_CLIPS;
  const amount = countToPlace(view);
  return amount > 0
    ? { left: { kind: 'to-place', amount }, needs: true }
    : { left: { kind: 'all-placed' }, needs: false };
}

function countLineUp(view: LessonView): Count {
  if (view.clips.length === 0) return NO_CLIPS;
  const { state, done, total } = view.reading;
  // Flags that come before the cards are read would mostly go again.
  if (state === 'stamps' || state === 'cards')
    return { left: { kind: 'reading', done, total }, needs: false };
  const amount = listOpenFlags(view, 'line-up').length;
  return amount > 0
    ? { left: { kind: 'flags', amount }, needs: true }
    : { left: { kind: 'in-order' }, needs: false };
}

function countReview(view: LessonView): Count {
  const counting = view.clips.filter(({ criteria }) => criteria !== null);
  if (counting.length === 0) return NO_CLIPS;
  const amount = counting.filter(({ criteria }) => criteria?.some(({ confirmed }) => !confirmed)).length;
  return { left: amount > 0 ? { kind: 'left', amount } : { kind: 'all-inked' }, needs: false };
}

function countScores(view: LessonView): Count {
  if (view.squadScores.length === 0 || view.clips.length === 0) return NO_CLIPS;
  const amount = view.squadScores
    .flatMap(({ criteria }) => criteria)
    .filter(({ decided }) => decided === null).length;
  return { left: amount > 0 ? { kind: 'to-settle', amount } : { kind: 'settled' }, needs: false };
}
