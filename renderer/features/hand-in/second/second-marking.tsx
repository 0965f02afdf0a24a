import './second.css';
import { type ReactNode, useState } from 'react';
import type { StepProps } from '../../../client/steps.ts';
import { AGREEMENT } from '../../../text/english/agreement.ts';
import { SECOND } from '../../../text/english/second-marking.ts';
import { STEP_NAMES } from '../../../text/english/window.ts';
import { ScreenHead, Sheet } from '../../../ui/sheet.tsx';
import { AgreementSheet } from './agreement-sheet.tsx';
import { MarkersSheet } from './markers-sheet.tsx';
import { TalkSheet } from './talk-sheet.tsx';
import { useMarkings } from './use-markings.ts';

/** The same clips marked again, blind: who has, how far the two agree, and which clips to talk about. */
export function SecondMarking({ tools, ...step }: StepProps & { readonly tools: ReactNode }) {
  const markings = useMarkings(step.desk, step.lesson.revision);
  const [chosen, setChosen] = useState<string | null>(null);
  const shown = markings?.find(({ who }) => who === chosen) ?? markings?.[0] ?? null;
  return (
    <>
      <ScreenHead title={STEP_NAMES['hand-in']} sentence={SECOND.sentence}>
        {tools}
      </ScreenHead>
      <MarkersSheet {...step} markings={markings} shown={shown} onShow={setChosen} />
      {shown ? (
        <>
          <AgreementSheet marking={shown} names={step.names} />
          <TalkSheet marking={shown} lesson={step.lesson} names={step.names} go={step.go} />
        </>
      ) : (
        <Sheet label={SECOND.agreement} className="col pvw nobody">
          <p className="read pad">{markings ? AGREEMENT.none : SECOND.asking}</p>
        </Sheet>
      )}
    </>
  );
}
