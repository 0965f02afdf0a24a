// The desktop shell: windows on the page, and the desk behind them. What it may and may not do stands in locks.ts.

import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { app, BrowserWindow, dialog, ipcMain, Menu, protocol, session } from 'electron';
import { SHELL } from '../../renderer/text/english/shell.ts';
import type { LessonId } from '../../src-core/contract/desk-view.ts';
import { type Desk, openDesk } from '../../src-core/host/desk/desk.ts';
import { getHomeFolder } from '../../src-core/host/desk/desk-record.ts';
import { openPageFiles } from '../../src-core/host/page-files.ts';
import { answerPage } from './answer-page.ts';
import { buildMenu, type MenuActs } from './build-menu.ts';
import { openDeskWindow, showWindow, tellFront } from './desk-window.ts';
import { filmDemoApart } from './film-demo.ts';
import { getFolderDialog } from './folder-dialog.ts';
import { openShellWire } from './ipc-wire.ts';
import {
  type LockedContents,
  type LockedSession,
  lockContents,
  lockSession,
  PAGE_SCHEME,
  SCHEME_PRIVILEGES,
} from './locks.ts';
import { findNamedLesson } from './named-lesson.ts';
import { findWindowFor } from './window-for-lesson.ts';

/** The bundle lies in dist/electron, two levels below the program's folder. */
const SHELL_FOLDER = import.meta.dirname;
const ROOT = path.join(SHELL_FOLDER, '..', '..');

const { isPackaged } = app;
const isMac = process.platform === 'darwin';
const home = getHomeFolder();

protocol.registerSchemesAsPrivileged([{ scheme: PAGE_SCHEME, privileges: SCHEME_PRIVILEGES }]);
app.enableSandbox();
app.setPath('userData', path.join(home, 'window'));
app.on('web-contents-created', (_, contents) => lockContents(contents as LockedContents));

/** A plan that the system opens before the desk is there; macOS tells it by an event. */
let askedEarly: string | null = findLesson(process.argv.slice(1), process.cwd());
let desk: Desk | null = null;

function findLesson(words: readonly string[], workingFolder: string): string | null {
  return findNamedLesson({ words, workingFolder, ownFolder: app.getAppPath() });
}

async function start(): Promise<void> {
  await app.whenReady();
  lockSession(session.defaultSession as unknown as LockedSession, isPackaged);
  const files = await openPageFiles(path.join(ROOT, 'dist', 'renderer'));
  if (!files) throw new Error(SHELL.notBuilt);
  const filmPlaces = { root: pathToFileURL(`${ROOT}${path.sep}`).href, films: path.join(home, 'films') };
  const windowParts = { home, shellFolder: SHELL_FOLDER, isPackaged };
  const showAny = () => {
    const [window] = BrowserWindow.getAllWindows();
    if (window) showWindow(window);
    else openDeskWindow(windowParts);
  };
  const showLesson = (lesson: LessonId) => {
    const window = findWindowFor(lesson, BrowserWindow.getAllWindows());
    if (window) showWindow(window);
    else openDeskWindow(windowParts, lesson);
  };
  const opened = await openDesk({
    face: 'window',
    version: app.getVersion(),
    home,
    chooseFolders: async (purpose) => {
      const { canceled, filePaths } = await dialog.showOpenDialog(getFolderDialog(purpose));
      return canceled ? [] : filePaths;
    },
    filmDemo: (folder, job) => filmDemoApart(filmPlaces, folder, job),
    onFault: (trace, fault) => process.stderr.write(`fault ${trace}: ${describeFault(fault)}\n`),
    onAsked: showLesson,
  });
  desk = opened;
  protocol.handle(PAGE_SCHEME, (request) => answerPage(request, { files, lessons: opened.lessons }));
  const wire = openShellWire(opened, ipcMain, (paths, contents) =>
    wire.tell(contents, { kind: 'folders-dropped', folders: paths.map(opened.tokens.hand) }),
  );
  const acts: MenuActs = {
    tell: (command) => tellFront(wire, { kind: 'menu', command }),
    openWindow: () => openDeskWindow(windowParts),
  };
  Menu.setApplicationMenu(Menu.buildFromTemplate(buildMenu(acts, { isMac, isPackaged })));
  if (askedEarly !== null) await opened.openFirst(askedEarly);
  if (BrowserWindow.getAllWindows().length === 0) openDeskWindow(windowParts);
  app.on('activate', showAny);
  app.on('second-instance', async (_, words, workingFolder) => {
    const folder = findLesson(words.slice(1), workingFolder);
    const named = folder === null ? null : await opened.openFirst(folder);
    if (!named?.ok) showAny();
  });
}

function describeFault(fault: unknown): string {
  return fault instanceof Error ? (fault.stack ?? fault.message) : String(fault);
}

app.on('open-file', (event, file) => {
  event.preventDefault();
  const folder = findLesson([file], '/');
  if (folder !== null && desk) void desk.openFirst(folder);
  else askedEarly ??= folder;
});
app.on('window-all-closed', () => {
  if (!isMac) app.quit();
});
app.on('will-quit', () => void desk?.close());

if (app.requestSingleInstanceLock()) {
  start().catch((fault) => {
    dialog.showErrorBox(SHELL.notStarted, describeFault(fault));
    app.exit(1);
  });
} else app.quit();
