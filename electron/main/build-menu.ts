import { MENU } from '../../renderer/text/english/shell.ts';
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

/** What the menu's own entries do. */
export interface MenuActs {
  readonly tell: (command: MenuCommand) => void;
  readonly openWindow: () => void;
}

/**
 * The menu bar. Commands go to the page, which knows what they mean where the teacher is; the page shows the same
 * keys in its help. `isMac`: the first menu bears the program's name, as that system has it.
 */
export function buildMenu(
  { tell, openWindow }: MenuActs,
  { isMac, isPackaged }: { readonly isMac: boolean; readonly isPackaged: boolean },
): MenuColumn[] {
  const command = (label: string, name: MenuCommand, accelerator?: string): MenuEntry => ({
    label,
    ...(accelerator === undefined ? {} : { accelerator }),
    click: () => tell(name),
  });
  const own: MenuColumn = {
    label: MENU.program,
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
    label: MENU.lesson,
    submenu: [
      command(MENU.open, 'open-lesson', 'CmdOrCtrl+O'),
      command(MENU.bringIn, 'bring-in', 'CmdOrCtrl+2'),
      command(MENU.handIn, 'hand-in', 'CmdOrCtrl+6'),
      LINE,
      { label: MENU.newWindow, click: openWindow },
      isMac ? { role: 'close' } : { role: 'quit' },
    ],
  };
  const edit: MenuColumn = {
    label: MENU.edit,
    submenu: [
      command(MENU.undo, 'undo', 'CmdOrCtrl+Z'),
      command(MENU.redo, 'redo', 'CmdOrCtrl+Shift+Z'),
      LINE,
      { role: 'cut' },
      { role: 'copy' },
      { role: 'paste' },
      { role: 'selectAll' },
      LINE,
      command(MENU.nextFlag, 'next-flag'),
    ],
  };
  const view: MenuColumn = {
    label: MENU.view,
    submenu: [
      { role: 'resetZoom' },
      { role: 'zoomIn' },
      { role: 'zoomOut' },
      LINE,
      { role: 'togglefullscreen' },
      ...(isPackaged ? [] : [LINE, { role: 'reload' as const }, { role: 'toggleDevTools' as const }]),
    ],
  };
  const window: MenuColumn = { label: MENU.window, submenu: [{ role: 'minimize' }, { role: 'zoom' }] };
  const help: MenuColumn = { label: MENU.help, submenu: [command(MENU.keys, 'keys')] };
  return isMac ? [own, lesson, edit, view, window, help] : [lesson, edit, view, help];
}
