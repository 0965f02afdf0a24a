import { useState } from 'react';
import { readDroppedFiles } from '../../client/send-files.ts';
import { ROSTER } from '../../text/english/plan-squads.ts';
import { Button } from '../../ui/button.tsx';
import { FolderPicker } from '../../ui/folder-picker.tsx';
import { ProblemLines } from '../../ui/problem-lines.tsx';
import { SlipDialog } from '../../ui/slip-dialog.tsx';
import { RosterPreview } from './roster-preview.tsx';
import type { ClassDesk } from './use-class.ts';
import { useRosterImport } from './use-roster-import.ts';

/** Takes a class list over: choose or drop it, see what it would change, then take it. Sits on the sheet. */
export function RosterImport({
  pupilDesk: { desk, deskView, names },
  onClose,
}: {
  readonly pupilDesk: ClassDesk;
  readonly onClose: () => void;
}) {
  const list = useRosterImport(desk);
  const [isPicking, setPicking] = useState(false);
  const chooseFolder = async () => {
    if (!deskView.hasFolderDialog) return setPicking(true);
    const reply = await desk.client.request('chooseFolders', { purpose: 'class-list' });
    const [folder] = reply.ok ? reply.value.folders : [];
    if (folder) list.takeFolder(folder.token);
  };
  return (
    <SlipDialog title={ROSTER.head} onClose={onClose}>
      {/* biome-ignore lint/a11y/noStaticElementInteractions: dropping is a second way; the field takes files by key too */}
      <div
        className="roster-from"
        onDragOver={(event) => event.preventDefault()}
        onDrop={(event) => {
          event.preventDefault();
          if (deskView.takesUploads) void readDroppedFiles(event.dataTransfer).then(list.takeFiles);
        }}
      >
        <p className="read">{ROSTER.what}</p>
        <div className="rem">
          {deskView.takesUploads && (
            <label>
              <span className="vh">{ROSTER.file}</span>
              <input
                type="file"
                multiple
                accept=".csv,.zip,text/csv,application/zip"
                onChange={({ target }) => {
                  const files = [...(target.files ?? [])].map((file) => ({ path: file.name, file }));
                  if (files.length > 0) void list.takeFiles(files);
                }}
              />
            </label>
          )}
          <Button onPress={() => void chooseFolder()}>{ROSTER.folder}</Button>
        </div>
      </div>
      {isPicking && (
        <FolderPicker
          client={desk.client}
          wants="any"
          onChoose={({ token }) => {
            setPicking(false);
            list.takeFolder(token);
          }}
          onClose={() => setPicking(false)}
        />
      )}
      {list.isReading && (
        <p className="pen" role="status">
          {ROSTER.reading}
        </p>
      )}
      <ProblemLines problems={list.problems} names={names} />
      {list.preview && (
        <RosterPreview
          list={list}
          preview={list.preview.value}
          names={names}
          onTake={() => void list.merge().then((isDone) => isDone && onClose())}
          onLeave={onClose}
        />
      )}
    </SlipDialog>
  );
}
