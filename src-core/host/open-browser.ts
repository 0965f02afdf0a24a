import { spawn } from 'node:child_process';
import { accessSync, constants } from 'node:fs';
import path from 'node:path';

/** How the window was shown: of its own, as a tab, or not at all. */
export type Shown = 'window' | 'tab' | 'none';

/** Browsers that can show an address as a window of its own, by the names of their programs. */
const APP_BROWSERS = [
  'google-chrome',
  'google-chrome-stable',
  'chromium',
  'chromium-browser',
  'microsoft-edge',
  'microsoft-edge-stable',
  'brave-browser',
];

const MAC_BROWSERS = ['Google Chrome', 'Microsoft Edge', 'Chromium', 'Brave Browser'].map(
  (name) => `/Applications/${name}.app/Contents/MacOS/${name}`,
);

/**
 * Shows an address in this machine's browser: as a window of its own where there is a browser of the Chromium family
 * (`ROUTEMARK_CHROMIUM` names another one), else wherever the system opens addresses.
 */
export async function openBrowser(
  address: string,
  environment: NodeJS.ProcessEnv = process.env,
): Promise<Shown> {
  const browser = findAppBrowser(environment);
  if (browser !== null && (await start(browser, [`--app=${address}`, '--no-first-run']))) return 'window';
  const opener = getOpener(address);
  return (await start(opener.program, opener.args)) ? 'tab' : 'none';
}

/** The program of a browser that has app windows; null where none was found. */
export function findAppBrowser(environment: NodeJS.ProcessEnv): string | null {
  const named = environment.ROUTEMARK_CHROMIUM;
  return [...(named ? [named] : []), ...listUsualPlaces(environment)].find(isExecutable) ?? null;
}

function listUsualPlaces(environment: NodeJS.ProcessEnv): readonly string[] {
  if (process.platform === 'darwin') return MAC_BROWSERS;
  if (process.platform === 'win32') {
    const roots = [environment.ProgramFiles, environment['ProgramFiles(x86)'], environment.LOCALAPPDATA];
    return roots.flatMap((root) =>
      root
        ? [
            path.join(root, 'Google', 'Chrome', 'Application', 'chrome.exe'),
            path.join(root, 'Microsoft', 'Edge', 'Application', 'msedge.exe'),
          ]
        : [],
    );
  }
  const folders = (environment.PATH ?? '').split(path.delimiter).filter((folder) => folder !== '');
  return APP_BROWSERS.flatMap((name) => folders.map((folder) => path.join(folder, name)));
}

function getOpener(address: string): { readonly program: string; readonly args: readonly string[] } {
  if (process.platform === 'darwin') return { program: 'open', args: [address] };
  if (process.platform === 'win32') {
    return { program: 'rundll32.exe', args: ['url.dll,FileProtocolHandler', address] };
  }
  return { program: 'xdg-open', args: [address] };
}

function isExecutable(file: string): boolean {
  try {
    accessSync(file, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/** How long a program must live to count as started, where it does not end well before. */
const STARTED_MS = 1500;

/** True where the program ended well or goes on; it outlives us. */
function start(program: string, args: readonly string[]): Promise<boolean> {
  return new Promise((resolve) => {
    const child = spawn(program, args, { detached: true, stdio: 'ignore' });
    const timer = setTimeout(() => resolve(true), STARTED_MS);
    const settle = (isGood: boolean) => {
      clearTimeout(timer);
      resolve(isGood);
    };
    child.once('error', () => settle(false));
    child.once('exit', (code) => settle(code === 0));
    child.unref();
  });
}
