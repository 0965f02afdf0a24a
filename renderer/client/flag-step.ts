import type { FlagView, LessonView } from '../../src-core/contract/lesson-view.ts';
import type { FlagCode } from '../../src-core/matching/flag.ts';

/** Where a flag is settled: what concerns the files at Bring in, what concerns the route at Line up. */
const STEP_OF: Readonly<Record<FlagCode, 'bring-in' | 'line-up'>> = {
  'out-of-order': 'line-up',
  missing: 'line-up',
  extra: 'line-up',
  retake: 'line-up',
  'wrong-place': 'line-up',
  unplaced: 'line-up',
  'too-short': 'line-up',
  'clock-doubtful': 'bring-in',
  'outside-period': 'bring-in',
  'handed-in-twice': 'bring-in',
  'same-footage': 'bring-in',
  'other-squad': 'bring-in',
  unreadable: 'bring-in',
};

/** The step that a flag belongs to; each flag is counted at one step alone. */
export function getFlagStep(code: FlagCode): 'bring-in' | 'line-up' {
  return STEP_OF[code];
}

/** Whether a flag waits for the teacher's word. */
export function isOpen({ asks, answer }: FlagView): boolean {
  return asks && answer === null;
}

/** Flags of a step that wait for the teacher; of the route, none before the routes are known. */
export function listOpenFlags(
  view: Pick<LessonView, 'flags' | 'clips' | 'reading'>,
  step: 'bring-in' | 'line-up',
): readonly FlagView[] {
  if (step === 'line-up' && !areRoutesKnown(view)) return [];
  return view.flags.filter((entry) => isOpen(entry) && getFlagStep(entry.flag.code) === step);
}

/** Whether flags of the route mean anything yet: before the cards are read most of them would go again. */
export function areRoutesKnown({ clips, reading }: Pick<LessonView, 'clips' | 'reading'>): boolean {
  return clips.length > 0 && reading.state !== 'stamps' && reading.state !== 'cards';
}
