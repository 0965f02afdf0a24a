import './look-after.css';
import type { ReactNode } from 'react';
import type { StepProps } from '../../../client/steps.ts';
import { LOOK_AFTER } from '../../../text/english/look-after.ts';
import { STEP_NAMES } from '../../../text/english/window.ts';
import { ScreenHead } from '../../../ui/sheet.tsx';
import { BackUpSheet } from './back-up-sheet.tsx';
import { KeepSheet } from './keep-sheet.tsx';
import { LetGoSheet } from './let-go-sheet.tsx';
import { PupilsSheet } from './pupils-sheet.tsx';
import { TabletSheet } from './tablet-sheet.tsx';
import { useKeeping } from './use-keeping.ts';

/** What is kept of the lesson: how long, on whom, where else, and letting it go. */
export function LookAfter({ tools, ...step }: StepProps & { readonly tools: ReactNode }) {
  const keeping = useKeeping(step.desk);
  return (
    <>
      <ScreenHead title={STEP_NAMES['hand-in']} sentence={LOOK_AFTER.sentence}>
        {tools}
      </ScreenHead>
      <div className="stack">
        <KeepSheet keeping={keeping} className={step.lesson.plan.lesson.className} names={step.names} />
        <TabletSheet {...step} />
        <BackUpSheet {...step} />
      </div>
      <PupilsSheet {...step} />
      <LetGoSheet
        {...step}
        clipsElsewhere={keeping.view?.clipsElsewhere ?? null}
        onDeleted={() => void keeping.look()}
      />
    </>
  );
}
