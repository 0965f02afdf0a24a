import type { DeskView } from '../../src-core/contract/desk-view.ts';
import type { LessonView } from '../../src-core/contract/lesson-view.ts';
import type { LessonDesk } from './lesson-desk.ts';
import type { LessonNames } from './lesson-names.ts';
import type { LessonState } from './lesson-state.ts';

/** The steps of the way, in order. */
export const STEPS = ['plan', 'bring-in', 'line-up', 'review', 'scores', 'hand-in'] as const;

/** One step of the way. */
export type Step = (typeof STEPS)[number];

/** What every step's entry component is given. */
export interface StepProps {
  readonly lesson: LessonView;
  /** What is going on beside the lesson itself: reading, outstanding decisions, troubles. */
  readonly state: LessonState;
  readonly desk: LessonDesk;
  /** What the host can do: dialogs, uploads, ffmpeg. */
  readonly deskView: DeskView;
  readonly names: LessonNames;
  /** What of the step is asked for, such as a clip's id or a flag's key; null: nothing in particular. */
  readonly target: string | null;
  /** Shows another step, or another target of this one. */
  readonly go: (step: Step, target?: string | null) => void;
}
