import type { ReactNode } from 'react';
import type { CallInput } from '../../src-core/contract/calls.ts';
import type { DeskClient } from '../../src-core/contract/desk-client.ts';
import type { DeskView, FolderRef } from '../../src-core/contract/desk-view.ts';
import { Button } from './button.tsx';
import { FolderChoice, useFolderChoice } from './folder-choice.tsx';

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
  const choice = useFolderChoice(client, { desk: deskView, purpose }, onChoose);
  return (
    <>
      <Button isDisabled={isDisabled} onPress={choice.ask}>
        {children}
      </Button>
      <FolderChoice at={choice} />
    </>
  );
}
