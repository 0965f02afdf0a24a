import type { StepProps } from '../../client/steps.ts';
import { STEP_NAMES } from '../../text/english/window.ts';
import { ScreenHead } from '../../ui/sheet.tsx';

/** The screen of this step. */
export function Plan({ lesson }: StepProps) {
  return <ScreenHead title={STEP_NAMES.plan} sentence={lesson.plan.lesson.title} />;
}
