import './hand-in.css';
import { useState } from 'react';
import type { FolderRef } from '../../../src-core/contract/desk-view.ts';
import type { SheetColumn } from '../../../src-core/gradebook/grade-sheet.ts';
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
  const { mappings, mapping, columns, onUse } = useColumns(desk);
  const { draft, problems, isAsking } = useSheetDraft(desk, columns, lesson.revision);
  const [into, setInto] = useState<FolderRef | null>(null);
  const [typedName, setTypedName] = useState<string | null>(null);
  const [isTicked, setTicked] = useState(false);
  const writing = useWriting(desk);
  const goToFlag = () => {
    const first = lesson.flags.find(isOpen);
    return first ? go(getFlagStep(first.flag.code), first.key) : false;
  };
  const counted = draft ? countBefore(lesson, draft.check) : null;
  const fileName = typedName ?? draft?.fileName ?? '';
  const canWrite = (counted?.openFlags === 0 || isTicked) && state.waiting === 0 && !isAsking;
  const write = (replace: boolean) => {
    const order = { columns, into: into?.token ?? null, fileName, replace };
    if (draft?.draft && canWrite) void writing.write({ draft: draft.draft, ...order });
  };
  useKeys({ 'next-flag': goToFlag, write: () => (canWrite ? write(false) : false) });
  const head = <ScreenHead title={STEP_NAMES['hand-in']} sentence={HAND_IN.sentence} />;
  // Before any clip is here there is nothing to count: a sheet of noughts helps nobody.
  if (lesson.clips.length === 0 || !draft?.sheet || !counted || draft.text === null || draft.draft === null) {
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
  const { text, sheet } = draft;
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
      <PreviewSheet {...{ fileName, sheet, text, mappings, onUse }} mapping={mapping?.name ?? null} />
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

/** The columns in force: remembered for a destination, loose, or (null) the plan's. */
function useColumns({ client, lesson }: StepProps['desk']) {
  const mappings = useMappings(client);
  const chosen = useDraft(`mapping:${lesson}`);
  const mapping = mappings.list.find(({ name }) => name === chosen.text) ?? null;
  const [loose, setLoose] = useState<readonly SheetColumn[] | null>(null);
  const onUse = (used: readonly SheetColumn[] | null, name: string | null) => {
    setLoose(used);
    if (name === null) chosen.drop();
    else chosen.write(name);
  };
  return { mappings, mapping, columns: mapping?.columns ?? loose, onUse };
}
