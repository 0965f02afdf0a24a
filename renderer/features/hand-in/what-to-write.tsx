import type { DeskClient } from '../../../src-core/contract/desk-client.ts';
import type { DeskView } from '../../../src-core/contract/desk-view.ts';
import type { LessonView } from '../../../src-core/contract/lesson-view.ts';
import type { LessonNames } from '../../client/lesson-names.ts';
import { HAND_IN } from '../../text/english/hand-in.ts';
import { Button } from '../../ui/button.tsx';
import { FolderButton } from '../../ui/folder-button.tsx';
import { Sheet } from '../../ui/sheet.tsx';
import { Kinds } from './kinds.tsx';
import type { Marks } from './use-marks.ts';

/** What is written, under which name, and into which folder. */
export function WhatToWrite({
  lesson,
  names,
  client,
  deskView,
  marks,
}: {
  readonly lesson: LessonView;
  readonly names: LessonNames;
  readonly client: DeskClient;
  readonly deskView: DeskView;
  readonly marks: Marks;
}) {
  const { choice, into, setInto } = marks;
  const { handedIn } = lesson.journal;
  const last = handedIn.at(-1);
  const { lastFolder } = choice.memory;
  return (
    <Sheet label={HAND_IN.what} className="col">
      <header className="hd">
        <h2>{HAND_IN.what}</h2>
      </header>
      <Kinds choice={choice} />
      <div className="to">
        {last && (
          <p className="cap">
            {HAND_IN.handedIn(handedIn.length, names.times.dayAndMinute(Date.parse(last.at)))}
          </p>
        )}
        <label>
          {HAND_IN.fileName}
          <input
            value={marks.typedName}
            maxLength={200}
            onChange={({ currentTarget }) => marks.setTypedName(currentTarget.value)}
          />
        </label>
        <p>
          {HAND_IN.into} {into === null && HAND_IN.lessonFolder}
          <br />
          <b>{into?.path ?? HAND_IN.ownFolder(lesson.path.split(/[\\/]/).at(-1) ?? '')}</b>
        </p>
        {lastFolder && into?.token !== lastFolder.token && (
          <Button onPress={() => setInto(lastFolder)}>{HAND_IN.asLastTime(lastFolder.name)}</Button>
        )}
        <FolderButton {...{ client, deskView }} purpose="hand-in" onChoose={setInto}>
          {HAND_IN.change}
        </FolderButton>
        {into && <Button onPress={() => setInto(null)}>{HAND_IN.back}</Button>}
      </div>
    </Sheet>
  );
}
