import { useEffect, useState } from 'react';
import type { CallOutput } from '../../src-core/contract/calls.ts';
import type { DeskClient } from '../../src-core/contract/desk-client.ts';
import type { FolderRef } from '../../src-core/contract/desk-view.ts';
import type { Problem } from '../../src-core/contract/problem.ts';
import { BARE_NAMES } from '../client/lesson-names.ts';
import { describeProblem } from '../text/english/problems.ts';
import { FRAME, START } from '../text/english/window.ts';
import { Button } from './button.tsx';
import { Glyph } from './glyph.tsx';
import { SlipDialog } from './slip-dialog.tsx';
import { StopNote } from './stop-note.tsx';

/** Walks the folders of this machine, for windows without the system's own dialog. */
export function FolderPicker({
  client,
  wants,
  onChoose,
  onClose,
}: {
  readonly client: DeskClient;
  /** `lesson`: only a folder with a plan can be chosen. */
  readonly wants: 'lesson' | 'any';
  readonly onChoose: (folder: FolderRef) => void;
  readonly onClose: () => void;
}) {
  const [at, setAt] = useState<string | null>(null);
  const [listing, setListing] = useState<CallOutput<'listFolders'> | null>(null);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  useEffect(() => {
    let isWanted = true;
    void client.request('listFolders', { folder: at }).then((reply) => {
      if (!isWanted) return;
      setProblems(reply.ok ? [] : reply.problems);
      if (reply.ok) setListing(reply.value);
    });
    return () => {
      isWanted = false;
    };
  }, [client, at]);
  const here = listing?.here ?? null;
  const canChoose = here !== null && (wants === 'any' || here.isLesson);
  return (
    <SlipDialog title={START.folders} onClose={onClose}>
      <p className="folder-here">{here?.path ?? START.places}</p>
      {problems.length > 0 && (
        <StopNote title={FRAME.trouble} advice={problems.map((each) => describeProblem(each, BARE_NAMES))} />
      )}
      <ol className="folders">
        {here && (
          <li>
            <button type="button" className="first" onClick={() => setAt(listing?.parent?.token ?? null)}>
              <Glyph name="back" /> {START.up}
            </button>
          </li>
        )}
        {listing?.folders.map((folder) => (
          <li key={folder.token}>
            <button
              type="button"
              onClick={() => (wants === 'lesson' && folder.isLesson ? onChoose(folder) : setAt(folder.token))}
            >
              <Glyph name="folder" /> {folder.name}
              {folder.isLesson && <span className="cap"> {START.lesson}</span>}
            </button>
          </li>
        ))}
      </ol>
      {listing?.folders.length === 0 && <p className="pen">{START.noFolders}</p>}
      <Button look="ink" isDisabled={!canChoose} onPress={() => here && onChoose(here)}>
        {wants === 'lesson' ? START.openThis : START.chooseThis}
      </Button>
    </SlipDialog>
  );
}
