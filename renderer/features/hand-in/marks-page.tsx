import { type ReactNode, useState } from 'react';
import type { FolderRef } from '../../../src-core/contract/desk-view.ts';
import { getFlagStep, isOpen } from '../../client/flag-step.ts';
import type { StepProps } from '../../client/steps.ts';
import { HAND_IN } from '../../text/english/hand-in.ts';
import { STEP_NAMES } from '../../text/english/window.ts';
import { useKeys } from '../../ui/keys/use-keys.ts';
import { ScreenHead, Sheet } from '../../ui/sheet.tsx';
import { CountedBefore } from './counted.tsx';
import { countBefore } from './counts.ts';
import { getFullName } from './file-names.ts';
import { NoSheet } from './no-sheet.tsx';
import { Preview } from './preview.tsx';
import { useChoice } from './use-choice.ts';
import { useHandInDraft } from './use-hand-in-draft.ts';
import { useWriting } from './use-writing.ts';
import { WhatToWrite } from './what-to-write.tsx';
import { WriteBox } from './write-box.tsx';

/** What to write and where, exactly what will be written, and what is counted before. */
export function MarksPage({ tools, ...props }: StepProps & { readonly tools: ReactNode }) {
  const { lesson, state, desk, deskView, names, go } = props;
  const choice = useChoice(desk);
  const { draft, problems, isAsking } = useHandInDraft(desk, choice.what, lesson.revision);
  const [into, setInto] = useState<FolderRef | null>(null);
  const [typedName, setTypedName] = useState<string | null>(null);
  const [isTicked, setTicked] = useState(false);
  const writing = useWriting(desk);
  const goToFlag = () => {
    const first = lesson.flags.find(isOpen);
    return first ? go(getFlagStep(first.flag.code), first.key) : false;
  };
  const counted = draft ? countBefore(lesson, draft.check) : null;
  const fileName = getFullName(typedName ?? draft?.fileName ?? '', choice.kind);
  const isFree = (counted?.openFlags === 0 || isTicked) && state.waiting === 0 && !isAsking;
  const canWrite = isFree && draft?.draft != null;
  const write = (replace: boolean) => {
    const order = { what: choice.what, into: into?.token ?? null, fileName, replace };
    if (draft?.draft && canWrite) void writing.write({ draft: draft.draft, ...order });
  };
  useKeys({ 'next-flag': goToFlag, write: () => (canWrite ? write(false) : false) });
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
      <WhatToWrite
        {...{ lesson, names, deskView, into, choice }}
        client={desk.client}
        fileName={typedName ?? draft.fileName}
        onInto={setInto}
        onFileName={setTypedName}
      />
      <Preview {...{ fileName, choice, desk, deskView, names }} draft={draft} preview={draft.preview} />
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
        <WriteBox
          {...{ isTicked, fileName, canWrite, writing, names }}
          openFlags={counted.openFlags}
          onTick={setTicked}
          onWrite={write}
        />
      </Sheet>
    </>
  );
}
