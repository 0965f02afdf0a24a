import './hand-in.css';
import { useState } from 'react';
import type { FolderRef } from '../../../src-core/contract/desk-view.ts';
import { getFlagStep, isOpen } from '../../client/flag-step.ts';
import type { StepProps } from '../../client/steps.ts';
import { useDraft } from '../../storage/use-draft.ts';
import { HAND_IN } from '../../text/english/hand-in.ts';
import { STEP_NAMES } from '../../text/english/window.ts';
import { useKeys } from '../../ui/keys/use-keys.ts';
import { ScreenHead, Sheet } from '../../ui/sheet.tsx';
import { CountedBefore } from './counted.tsx';
import { countBefore } from './counts.ts';
import { NoSheet } from './no-sheet.tsx';
import { PreviewSheet } from './preview-sheet.tsx';
import { useMappings } from './use-mappings.ts';
import { useSheetDraft } from './use-sheet-draft.ts';
import { useWriting } from './use-writing.ts';
import { WhatToWrite } from './what-to-write.tsx';
import { WriteBox } from './write-box.tsx';

/** Hand in: what to write and where, exactly what will be written, and what is counted before. */
export function HandIn({ lesson, state, desk, deskView, names, go }: StepProps) {
  const mappings = useMappings(desk.client);
  const chosen = useDraft(`mapping:${lesson.lesson}`);
  const mapping = mappings.list.find(({ name }) => name === chosen.text) ?? null;
  const [loose, setLoose] = useState<NonNullable<typeof mapping>['columns'] | null>(null);
  const columns = mapping?.columns ?? loose;
  const { draft, problems, isAsking } = useSheetDraft(desk, columns, lesson.revision);
  const [into, setInto] = useState<FolderRef | null>(null);
  const [typedName, setTypedName] = useState<string | null>(null);
  const [isTicked, setTicked] = useState(false);
  const writing = useWriting(desk);
  const goToFlag = () => {
    const first = lesson.flags.find(isOpen);
    return first ? go(getFlagStep(first.flag.code), first.key) : false;
  };
  useKeys({ 'next-flag': goToFlag });
  const head = <ScreenHead title={STEP_NAMES['hand-in']} sentence={HAND_IN.sentence} />;
  // Before any clip is here there is nothing to count: a sheet of noughts helps nobody.
  if (lesson.clips.length === 0 || !draft?.sheet || draft.text === null || draft.draft === null) {
    return (
      <>
        {head}
        <NoSheet {...{ problems, names }} isAsking={isAsking && lesson.clips.length > 0} goToBringIn={() => go('bring-in')} />
      </>
    );
  }
  const { draft: draftId, text, sheet } = draft;
  const counted = countBefore(lesson, draft.check);
  const fileName = typedName ?? draft.fileName;
  const canWrite = (counted.openFlags === 0 || isTicked) && state.waiting === 0 && !isAsking;
  return (
    <>
      {head}
      <WhatToWrite
        {...{ lesson, names, deskView, into, fileName }}
        client={desk.client}
        rows={sheet.rows.length}
        mapping={mapping?.name ?? null}
        onInto={setInto}
        onFileName={setTypedName}
      />
      <PreviewSheet
        {...{ fileName, sheet, text, mappings }}
        mapping={mapping?.name ?? null}
        onUse={(used, name) => {
          setLoose(used);
          if (name === null) chosen.drop();
          else chosen.write(name);
        }}
      />
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
          onWrite={(replace) =>
            void writing.write({ draft: draftId, columns, into: into?.token ?? null, fileName, replace })
          }
        />
      </Sheet>
    </>
  );
}
