import type { StepProps } from '../../client/steps.ts';
import { STEP_NAMES } from '../../text/english/window.ts';
import { ScreenHead } from '../../ui/sheet.tsx';

/** The screen of this step. */
export function Review({ lesson }: StepProps) {
  return <ScreenHead title={STEP_NAMES.review} sentence={lesson.plan.lesson.title} />;
}
