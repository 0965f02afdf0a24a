import { useState } from 'react';
import type { CallInput } from '../../src-core/contract/calls.ts';
import type { DeskClient } from '../../src-core/contract/desk-client.ts';
import type { DeskView, FolderRef } from '../../src-core/contract/desk-view.ts';
import type { Problem } from '../../src-core/contract/problem.ts';
import { BARE_NAMES } from '../client/lesson-names.ts';
import { describeProblem } from '../text/english/problems.ts';
import { FRAME } from '../text/english/window.ts';
import { FolderPicker } from './folder-picker.tsx';
import { StopNote } from './stop-note.tsx';

/** Asking for a folder: by the system's dialog, or by a slip where the window has none. */
export interface FolderAsk {
  readonly client: DeskClient;
  readonly ask: () => void;
  readonly take: (folder: FolderRef) => void;
  readonly isPicking: boolean;
  readonly stopPicking: () => void;
  /** Why the dialog gave nothing, other than that it was put away. */
  readonly problems: readonly Problem[];
}

/** One place where a folder is chosen; {@link FolderChoice} shows what comes of asking. */
export function useFolderChoice(
  client: DeskClient,
  { desk, purpose }: { readonly desk: DeskView | null } & CallInput<'chooseFolders'>,
  onChoose: (folder: FolderRef) => void,
): FolderAsk {
  const [isPicking, setPicking] = useState(false);
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const ask = async () => {
    setProblems([]);
    if (!desk?.hasFolderDialog) return setPicking(true);
    const reply = await client.request('chooseFolders', { purpose });
    if (!reply.ok) return setProblems(reply.problems);
    const [folder] = reply.value.folders;
    if (folder) onChoose(folder);
  };
  return {
    client,
    ask: () => void ask(),
    take: (folder) => {
      setPicking(false);
      onChoose(folder);
    },
    isPicking,
    stopPicking: () => setPicking(false),
    problems,
  };
}

/** The slip with the folders of this machine while one is chosen, or why none could be. */
export function FolderChoice({ at }: { readonly at: FolderAsk }) {
  const { client, take, isPicking, stopPicking, problems } = at;
  return (
    <>
      {isPicking && <FolderPicker client={client} wants="any" onChoose={take} onClose={stopPicking} />}
      {problems.length > 0 && (
        <StopNote title={FRAME.trouble} advice={problems.map((each) => describeProblem(each, BARE_NAMES))} />
      )}
    </>
  );
}
