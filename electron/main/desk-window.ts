import path from 'node:path';
import { BrowserWindow, dialog, screen } from 'electron';
import { SHELL } from '../../renderer/text/english/shell.ts';
import type { LessonId } from '../../src-core/contract/desk-view.ts';
import type { DeskEvent } from '../../src-core/contract/events.ts';
import { openCrashCount } from './crash-count.ts';
import type { ShellWire } from './ipc-wire.ts';
import { PAGE_ADDRESS, PAGE_PREFERENCES } from './locks.ts';
import { choosePlace, keepPlace, LEAST_SIZE, readPlace } from './window-place.ts';

/** What a window is opened with. */
export interface WindowParts {
  readonly home: string;
  /** Folder of the bundled preload. */
  readonly shellFolder: string;
  readonly isPackaged: boolean;
}

/** Opens a window on the page, where the last one stood; `lesson`: at this lesson, whatever the program began with. */
export function openDeskWindow(
  { home, shellFolder, isPackaged }: WindowParts,
  lesson: LessonId | null = null,
): BrowserWindow {
  const areas = screen.getAllDisplays().map(({ workArea }) => workArea);
  const { isMaximised, ...bounds } = choosePlace(readPlace(home), areas);
  const window = new BrowserWindow({
    ...bounds,
    minWidth: LEAST_SIZE.width,
    minHeight: LEAST_SIZE.height,
    show: false,
    webPreferences: {
      ...PAGE_PREFERENCES,
      preload: path.join(shellFolder, 'preload.cjs'),
      devTools: !isPackaged,
    },
  });
  if (isMaximised) window.maximize();
  window.once('ready-to-show', () => window.show());
  window.on(
    'close',
    () => void keepPlace(home, { ...window.getNormalBounds(), isMaximised: window.isMaximized() }),
  );
  bringBackAfterCrash(window);
  void window.loadURL(lesson === null ? PAGE_ADDRESS : `${PAGE_ADDRESS}#/${lesson}`);
  return window;
}

/**
 * A page that crashed is brought back; one that does so again and again asks first, and has nothing left to wait for.
 * One that hangs may answer again.
 */
function bringBackAfterCrash(window: BrowserWindow): void {
  const count = openCrashCount(() => performance.now());
  const ask = async (message: string, otherwise: string) => {
    const buttons = [SHELL.loadAgain, otherwise];
    const question = { type: 'warning', message, detail: SHELL.safe, buttons } as const;
    const { response } = await dialog.showMessageBox(window, question);
    if (window.isDestroyed()) return;
    if (response === 0) window.webContents.reload();
    else if (otherwise === SHELL.closeWindow) window.destroy();
  };
  window.webContents.on('render-process-gone', (_, { reason }) => {
    if (reason === 'clean-exit' || window.isDestroyed()) return;
    if (count() === 'reload') window.webContents.reload();
    else void ask(SHELL.failing, SHELL.closeWindow);
  });
  window.on('unresponsive', () => void ask(SHELL.hanging, SHELL.wait));
}

/** Brings a window to the front, wherever it is. */
export function showWindow(window: BrowserWindow): void {
  if (window.isMinimized()) window.restore();
  window.show();
  window.focus();
}

/** Tells the window in front, or any where none is. */
export function tellFront(wire: ShellWire, event: DeskEvent): void {
  const window = BrowserWindow.getFocusedWindow() ?? BrowserWindow.getAllWindows()[0];
  if (window) wire.tell(window.webContents, event);
}
