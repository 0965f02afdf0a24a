import { useEffect } from 'react';
import type { DeskClient } from '../../src-core/contract/desk-client.ts';
import type { MenuCommand } from '../../src-core/contract/events.ts';
import { isTextField, runKey } from '../ui/keys/use-keys.ts';

/** Does what the shell's menu asks for: each command is a key's, and means what that key means on this screen. */
export function useMenu(client: DeskClient): void {
  useEffect(
    () =>
      client.subscribe((event) => {
        if (event.kind === 'menu') carryOut(event.command);
      }),
    [client],
  );
}

/** The menu takes undo's key even while the teacher writes; then it takes back what was typed, and no decision. */
function carryOut(command: MenuCommand): void {
  const isRecall = command === 'undo' || command === 'redo';
  if (isRecall && isTextField(document.activeElement)) document.execCommand(command);
  else runKey(command);
}
