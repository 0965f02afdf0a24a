import type { LessonView } from '../../src-core/contract/lesson-view.ts';
import type { KeyId } from '../ui/keys/key-table.ts';
import { listOpenFlags } from './flag-step.ts';
import type { Step } from './steps.ts';

/** The keys of each screen that has something on it. */
const FOOT_KEYS: Readonly<Record<Step, readonly KeyId[]>> = {
  plan: [],
  'bring-in': ['add-folders', 'next-flag'],
  'line-up': ['next-flag', 'choose-station', 'move-clip', 'tablet-clock', 'keep-flag'],
  review: ['play', 'rep-down', 'frame-on', 'loop-rep', 'next-flag'],
  scores: ['open-squad', 'adjust', 'why'],
  'hand-in': ['write', 'next-flag'],
};

/** Keys of Line up that act on a flag alone. */
const OF_FLAGS = new Set<KeyId>(['next-flag', 'keep-flag']);

/** The few keys of a screen that its foot shows, as far as they do something now; all stand in the list of keys. */
export function listFootKeys(view: LessonView, step: Step, target: string | null): readonly KeyId[] {
  const keys = FOOT_KEYS[step];
  if (view.clips.length === 0) return step === 'bring-in' ? ['add-folders'] : [];
  if (step === 'line-up' && listOpenFlags(view, step).length === 0)
    return keys.filter((key) => !OF_FLAGS.has(key));
  return isBlank(view, step, target) ? [] : keys;
}

/** Whether nothing stands there for the keys to act on. */
function isBlank({ clips, squadScores }: LessonView, step: Step, target: string | null): boolean {
  if (step === 'review') return !clips.some(({ criteria }) => criteria !== null);
  if (step === 'scores') return squadScores.length === 0;
  // Its other pages write no sheet and have no flags.
  return step === 'hand-in' && target !== null;
}
