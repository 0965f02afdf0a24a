import { useState } from 'react';
import type { DeskClient } from '../../../src-core/contract/desk-client.ts';
import type { DeskView, FolderRef } from '../../../src-core/contract/desk-view.ts';
import type { LessonView } from '../../../src-core/contract/lesson-view.ts';
import type { LessonNames } from '../../client/lesson-names.ts';
import { HAND_IN } from '../../text/english/hand-in.ts';
import { Button } from '../../ui/button.tsx';
import { FolderPicker } from '../../ui/folder-picker.tsx';
import { Sheet } from '../../ui/sheet.tsx';

/** What is written, under which name, and into which folder. */
export function WhatToWrite({
  lesson,
  names,
  client,
  deskView,
  rows,
  mapping,
  into,
  fileName,
  onInto,
  onFileName,
}: {
  readonly lesson: LessonView;
  readonly names: LessonNames;
  readonly client: DeskClient;
  readonly deskView: DeskView;
  readonly rows: number;
  readonly mapping: string | null;
  /** Null: the lesson's own folder for sheets. */
  readonly into: FolderRef | null;
  readonly fileName: string;
  readonly onInto: (folder: FolderRef | null) => void;
  readonly onFileName: (name: string) => void;
}) {
  const [isPicking, setPicking] = useState(false);
  const { handedIn } = lesson.journal;
  const last = handedIn.at(-1);
  const choose = async () => {
    if (!deskView.hasFolderDialog) return setPicking(true);
    const reply = await client.request('chooseFolders', { purpose: 'hand-in' });
    const folder = reply.ok ? reply.value.folders[0] : undefined;
    if (folder) onInto(folder);
  };
  return (
    <Sheet label={HAND_IN.what} className="col">
      <header className="hd">
        <h2>{HAND_IN.what}</h2>
      </header>
      <div className="env">
        <h3>{HAND_IN.gradebook}</h3>
        <p className="cap">{HAND_IN.gradebookRows(rows, mapping)}</p>
        {last && (
          <p className="cap">
            {HAND_IN.handedIn(handedIn.length, names.times.dayAndMinute(Date.parse(last.at)))}
          </p>
        )}
      </div>
      <div className="to">
        <label>
          {HAND_IN.fileName}
          <input
            value={fileName}
            maxLength={200}
            onChange={({ currentTarget }) => onFileName(currentTarget.value)}
          />
        </label>
        <p>
          {HAND_IN.into} {into === null && HAND_IN.lessonFolder}
          <br />
          <b>{into?.path ?? HAND_IN.ownFolder(lesson.path.split(/[\\/]/).at(-1) ?? '')}</b>
        </p>
        <Button onPress={() => void choose()}>{HAND_IN.change}</Button>
        {into && <Button onPress={() => onInto(null)}>{HAND_IN.back}</Button>}
      </div>
      {isPicking && (
        <FolderPicker
          client={client}
          wants="any"
          onChoose={(folder) => {
            onInto(folder);
            setPicking(false);
          }}
          onClose={() => setPicking(false)}
        />
      )}
    </Sheet>
  );
}
