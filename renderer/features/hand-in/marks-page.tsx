import type { ReactNode } from 'react';
import { getFlagStep, isOpen } from '../../client/flag-step.ts';
import type { StepProps } from '../../client/steps.ts';
import { HAND_IN } from '../../text/english/hand-in.ts';
import { STEP_NAMES } from '../../text/english/window.ts';
import { useKeys } from '../../ui/keys/use-keys.ts';
import { ScreenHead, Sheet } from '../../ui/sheet.tsx';
import { CountedBefore } from './counted.tsx';
import { isPaper } from './file-names.ts';
import { NoSheet } from './no-sheet.tsx';
import { PaperPreview } from './paper-preview.tsx';
import { Preview } from './preview.tsx';
import { useMarks } from './use-marks.ts';
import { WhatToWrite } from './what-to-write.tsx';
import { WriteBox } from './write-box.tsx';

/** What to write and where, exactly what will be written, and what is counted before. */
export function MarksPage({ tools, ...props }: StepProps & { readonly tools: ReactNode }) {
  const { lesson, desk, deskView, names, go } = props;
  const marks = useMarks(props);
  const { choice, draft, problems, isAsking, counted, canWrite, fileName } = marks;
  const { kind } = choice;
  const goToFlag = () => {
    const first = lesson.flags.find(isOpen);
    return first ? go(getFlagStep(first.flag.code), first.key) : false;
  };
  useKeys({ 'next-flag': goToFlag, write: () => (canWrite ? marks.write(false) : false) });
  const head = (
    <ScreenHead title={STEP_NAMES['hand-in']} sentence={HAND_IN.sentence}>
      {tools}
    </ScreenHead>
  );
  // Before any clip is here there is nothing to count: a sheet of noughts helps nobody.
  if (lesson.clips.length === 0 || !draft?.preview || !counted) {
    return (
      <>
        {head}
        <NoSheet
          {...{ problems, names }}
          isAsking={isAsking && lesson.clips.length > 0}
          goToBringIn={() => go('bring-in')}
        />
      </>
    );
  }
  return (
    <>
      {head}
      <WhatToWrite {...{ lesson, names, deskView, marks }} client={desk.client} />
      {isPaper(kind) ? (
        <PaperPreview {...{ kind, fileName, lesson, desk }} />
      ) : (
        <Preview {...{ fileName, choice, desk, deskView, names }} draft={draft} preview={draft.preview} />
      )}
      <Sheet label={HAND_IN.counted} className="col">
        <header className="hd">
          <h2>{HAND_IN.counted}</h2>
          <span className="cap">{HAND_IN.slots(counted.slots)}</span>
        </header>
        <CountedBefore
          counted={counted}
          onFlags={goToFlag}
          onReview={() => go('review')}
          onScores={() => go('scores')}
        />
        <WriteBox marks={marks} names={names} />
      </Sheet>
    </>
  );
}
