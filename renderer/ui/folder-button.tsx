import { type ReactNode, useState } from 'react';
import type { CallInput } from '../../src-core/contract/calls.ts';
import type { DeskClient } from '../../src-core/contract/desk-client.ts';
import type { DeskView, FolderRef } from '../../src-core/contract/desk-view.ts';
import { Button } from './button.tsx';
import { FolderPicker } from './folder-picker.tsx';

/** A button that asks for a folder: by the system's dialog, or by a slip below it where the window has none. */
export function FolderButton({
  client,
  deskView,
  purpose,
  onChoose,
  isDisabled = false,
  children,
}: {
  readonly client: DeskClient;
  readonly deskView: DeskView;
  readonly purpose: CallInput<'chooseFolders'>['purpose'];
  readonly onChoose: (folder: FolderRef) => void;
  readonly isDisabled?: boolean;
  readonly children: ReactNode;
}) {
  const [isPicking, setPicking] = useState(false);
  const choose = async () => {
    if (!deskView.hasFolderDialog) return setPicking(true);
    const reply = await client.request('chooseFolders', { purpose });
    const [folder] = reply.ok ? reply.value.folders : [];
    if (folder) onChoose(folder);
  };
  return (
    <>
      <Button isDisabled={isDisabled} onPress={() => void choose()}>
        {children}
      </Button>
      {isPicking && (
        <FolderPicker
          client={client}
          wants="any"
          onChoose={(folder) => {
            setPicking(false);
            onChoose(folder);
          }}
          onClose={() => setPicking(false)}
        />
      )}
    </>
  );
}
