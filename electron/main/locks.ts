// Every lock of the desktop shell, each with its reason. The page shows films and texts that came from elsewhere;
// should any of them ever run as a program, it must find every door shut.

/** The scheme of the page and its media. A scheme of our own, so that the page has an origin and no file access. */
export const PAGE_SCHEME = 'routemark';

/** The page's own address. */
export const PAGE_ADDRESS = `${PAGE_SCHEME}://desk/`;

/** What the scheme may do: have an origin and storage, be fetched from, and stream films. */
export const SCHEME_PRIVILEGES = {
  standard: true,
  secure: true,
  supportFetchAPI: true,
  stream: true,
  codeCache: true,
} as const;

/** The frame that a message came from; Electron's WebFrameMain is one. */
export interface SenderFrame {
  readonly url: string;
  readonly parent: unknown;
}

/** How the page's process is kept in. */
export const PAGE_PREFERENCES = {
  // The page's world and the preload's are two: the page cannot change what the preload relies on.
  contextIsolation: true,
  // The page's process has no more rights than a browser tab's.
  sandbox: true,
  // No Node in the page, its workers or its frames.
  nodeIntegration: false,
  nodeIntegrationInWorker: false,
  nodeIntegrationInSubFrames: false,
  // The same-origin rule stays on, and nothing unencrypted is mixed in.
  webSecurity: true,
  allowRunningInsecureContent: false,
  experimentalFeatures: false,
  // No guests in the page.
  webviewTag: false,
  // A dropped file is clips to bring in, never a page to go to.
  navigateOnDragDrop: false,
  // The spell checker would fetch dictionaries from the network.
  spellcheck: false,
  safeDialogs: true,
} as const;

/** The page goes nowhere: not by link, script, redirect or drop. Reloading itself is all that is left. */
export function mayNavigate(address: string): boolean {
  return findOrigin(address) === findOrigin(PAGE_ADDRESS);
}

/** No window opens another one: neither ours nor the system's browser. */
export function answerWindowOpen(): { readonly action: 'deny' } {
  return { action: 'deny' };
}

/** The class clock fills the screen and keeps it lit; the second name is from memory. */
const NEEDED = ['fullscreen', 'screen-wake-lock'];

/** Permissions that the page may have. Camera, place, devices and the rest: never. */
export function mayUse(permission: string, address: string): boolean {
  return NEEDED.includes(permission) && mayNavigate(address);
}

/** Only our own page's main frame may ask anything: no frame within it, no other address, no frame that is gone. */
export function isTrustedSender(frame: SenderFrame | null): boolean {
  return frame !== null && frame.parent === null && mayNavigate(frame.url);
}

/** Nothing leaves this machine: what is not of our scheme, or made by the page itself, is not loaded. */
export function mayLoad(address: string, isPackaged: boolean): boolean {
  const scheme = /^[a-z][a-z0-9+.-]*:/.exec(address.toLowerCase())?.[0];
  if (scheme === `${PAGE_SCHEME}:` || scheme === 'blob:' || scheme === 'data:') return true;
  return !isPackaged && scheme === 'devtools:';
}

/** `routemark://desk`, by hand: a URL of an unknown scheme has no origin of its own outside Chromium. */
function findOrigin(address: string): string | null {
  try {
    const { protocol, host, username, password } = new URL(address);
    return username === '' && password === '' ? `${protocol}//${host}` : null;
  } catch {
    return null;
  }
}

/** The part of a window's contents that is locked; Electron's WebContents is one. */
export interface LockedContents {
  readonly on: (
    event: 'will-navigate' | 'will-redirect' | 'will-frame-navigate' | 'will-attach-webview',
    listener: (event: { readonly preventDefault: () => void; readonly url?: string }) => void,
  ) => unknown;
  readonly setWindowOpenHandler: (handler: () => { readonly action: 'deny' }) => void;
}

/** Locks one window's contents; called for every one that ever comes to be. */
export function lockContents(contents: LockedContents): void {
  for (const event of ['will-navigate', 'will-redirect', 'will-frame-navigate'] as const) {
    contents.on(event, (going) => {
      if (!mayNavigate(going.url ?? '')) going.preventDefault();
    });
  }
  contents.on('will-attach-webview', (attaching) => attaching.preventDefault());
  contents.setWindowOpenHandler(answerWindowOpen);
}

/** The part of a session that is locked; Electron's Session is one. */
export interface LockedSession {
  readonly setPermissionRequestHandler: (
    handler: (
      contents: unknown,
      permission: string,
      answer: (isGiven: boolean) => void,
      details: { readonly requestingUrl: string },
    ) => void,
  ) => void;
  readonly setPermissionCheckHandler: (
    handler: (contents: unknown, permission: string, origin: string) => boolean,
  ) => void;
  readonly setDevicePermissionHandler: (handler: () => boolean) => void;
  readonly webRequest: {
    readonly onBeforeRequest: (
      listener: (details: { readonly url: string }, answer: (response: { cancel: boolean }) => void) => void,
    ) => void;
  };
  readonly on: (
    event: 'will-download',
    listener: (event: { readonly preventDefault: () => void }) => void,
  ) => unknown;
}

/** Locks what all windows share. */
export function lockSession(session: LockedSession, isPackaged: boolean): void {
  session.setPermissionRequestHandler((_, permission, answer, { requestingUrl }) =>
    answer(mayUse(permission, requestingUrl)),
  );
  session.setPermissionCheckHandler((_, permission, origin) => mayUse(permission, origin));
  session.setDevicePermissionHandler(() => false);
  session.webRequest.onBeforeRequest(({ url }, answer) => answer({ cancel: !mayLoad(url, isPackaged) }));
  // Sheets are written by the host, where the teacher said; the page saves nothing by itself.
  session.on('will-download', (event) => event.preventDefault());
}
