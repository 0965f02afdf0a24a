import type { MenuCommand } from '../../src-core/contract/events.ts';

/** An entry of a menu as data; Electron's MenuItemConstructorOptions takes it. */
export type MenuEntry =
  | { readonly type: 'separator' }
  | { readonly label: string; readonly accelerator?: string; readonly click: () => void }
  | { readonly role: MenuRole; readonly label?: string };

/** What the system itself does for an entry. */
export type MenuRole =
  | 'about'
  | 'hide'
  | 'hideOthers'
  | 'unhide'
  | 'quit'
  | 'close'
  | 'cut'
  | 'copy'
  | 'paste'
  | 'selectAll'
  | 'reload'
  | 'resetZoom'
  | 'zoomIn'
  | 'zoomOut'
  | 'togglefullscreen'
  | 'minimize'
  | 'zoom'
  | 'toggleDevTools';

/** A menu of the bar. */
export interface MenuColumn {
  readonly label: string;
  readonly submenu: MenuEntry[];
}

const LINE: MenuEntry = { type: 'separator' };

/**
 * The menu bar. Commands go to the page, which knows what they mean where the teacher is; the page shows the same
 * keys in its help. `isMac`: the first menu bears the program's name, as that system has it.
 */
export function buildMenu(
  tell: (command: MenuCommand) => void,
  { isMac, isPackaged }: { readonly isMac: boolean; readonly isPackaged: boolean },
): MenuColumn[] {
  const command = (label: string, name: MenuCommand, accelerator?: string): MenuEntry => ({
    label,
    ...(accelerator === undefined ? {} : { accelerator }),
    click: () => tell(name),
  });
  const own: MenuColumn = {
    label: 'Routemark',
    submenu: [
      { role: 'about' },
      LINE,
      { role: 'hide' },
      { role: 'hideOthers' },
      { role: 'unhide' },
      LINE,
      { role: 'quit' },
    ],
  };
  const lesson: MenuColumn = {
    label: 'Lesson',
    submenu: [
      command('Open…', 'open-lesson', 'CmdOrCtrl+O'),
      command('Bring in clips…', 'bring-in', 'CmdOrCtrl+2'),
      command('Hand in', 'hand-in', 'CmdOrCtrl+6'),
      LINE,
      isMac ? { role: 'close' } : { role: 'quit' },
    ],
  };
  const edit: MenuColumn = {
    label: 'Edit',
    submenu: [
      command('Undo', 'undo', 'CmdOrCtrl+Z'),
      command('Redo', 'redo', 'CmdOrCtrl+Shift+Z'),
      LINE,
      { role: 'cut' },
      { role: 'copy' },
      { role: 'paste' },
      { role: 'selectAll' },
      LINE,
      command('Next flag', 'next-flag'),
    ],
  };
  const view: MenuColumn = {
    label: 'View',
    submenu: [
      { role: 'resetZoom' },
      { role: 'zoomIn' },
      { role: 'zoomOut' },
      LINE,
      { role: 'togglefullscreen' },
      ...(isPackaged ? [] : [LINE, { role: 'reload' as const }, { role: 'toggleDevTools' as const }]),
    ],
  };
  const help: MenuColumn = { label: 'Help', submenu: [command('Keys', 'keys')] };
  return isMac ? [own, lesson, edit, view, help] : [lesson, edit, view, help];
}
