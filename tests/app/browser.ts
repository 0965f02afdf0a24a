import { execFile } from 'node:child_process';
import { accessSync, constants } from 'node:fs';
import { cp, mkdir, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { buildDemoLesson } from '../../fixtures/build-demo-lesson.ts';
import { type Desk, openDesk } from '../../src-core/host/desk/desk.ts';
import { type ServedDesk, serveDesk } from '../../src-core/host/loopback/serve-desk.ts';
import { placeBuilds } from './bundle-program.ts';
import { linkDemoEvidence } from './link-folder.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

/** Flags that keep a Chromium to the page: no sandbox (none in containers), no network of its own. */
export const CHROMIUM_ARGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  // Its own updater has no say in tests, and asks for names all the same.
  '--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1',
];

// The first is the same engine without a browser's own bars, which cost as much as the page: best for many windows.
const PLACES = [
  '/usr/bin/chromium-headless-shell',
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
];

/** The system's Chromium, or the one that `ROUTEMARK_CHROMIUM` names; null where there is none. */
export function findChromium(): string | null {
  const named = process.env.ROUTEMARK_CHROMIUM;
  for (const place of named ? [named] : PLACES) {
    try {
      accessSync(place, constants.X_OK);
      return place;
    } catch {}
  }
  return null;
}

/** Whether browser tests can run here; where they cannot, says so once on standard error. */
export function canBrowse(): boolean {
  const found = findChromium() !== null;
  if (!found) process.stderr.write('Skipped: no Chromium here (set ROUTEMARK_CHROMIUM to its path).\n');
  return found;
}

/** A desk with a lesson of its own, served to a browser that is driven by the test. */
export interface TestDesk {
  readonly browser: Browser;
  readonly desk: Desk;
  /** The lesson folder; empty where the desk was opened without a lesson. */
  readonly folder: string;
  /** A new window on the desk, opened by a one-time address. What the page complains of is in `complaints`. */
  readonly openWindow: (look?: WindowLook) => Promise<TestWindow>;
  /** A one-time address of the desk, for a browser that has been there before. */
  readonly makeAddress: () => string;
  /** Ends the served desk, as when the program is closed, or starts it again on the same port. */
  readonly stopHost: () => Promise<void>;
  readonly startHost: () => Promise<void>;
  readonly close: () => Promise<void>;
}

/** One window of a {@link TestDesk}. */
export interface TestWindow {
  readonly context: BrowserContext;
  readonly page: Page;
  /** Faults, console errors, breaches of the page's policy and requests to other hosts, as they come. */
  readonly complaints: readonly string[];
}

/** How a window looks. */
export interface WindowLook {
  readonly width?: number;
  readonly height?: number;
  readonly theme?: 'light' | 'dark';
  readonly reducedMotion?: 'reduce' | 'no-preference';
  /** Clips are watched whole as soon as they are read, as a teacher's window does. Default: only when asked to. */
  readonly isWatchingByItself?: boolean;
}

/** The page as it is shipped, or as React's development build, which complains of slips in our code at run time. */
export type PageKind = 'shipped' | 'complaining';

/** What a test desk begins with. */
export interface TestDeskOptions {
  /** `demo`: a fresh demo lesson. `none`: no lesson. Otherwise a lesson folder, which is copied. */
  readonly lesson: 'demo' | 'none' | string;
  /** The lesson folder itself is opened, not a copy of it: for large ones that nobody else needs. */
  readonly isInPlace?: boolean;
  /** The demo's clips were looked at before, for tests of what comes after that. */
  readonly isLookedAt?: boolean;
  /** Default: the page as it is shipped. */
  readonly page?: PageKind;
  /** Leaves the lesson's clips out, for the empty state. */
  readonly withoutClips?: boolean;
}

const built = new Map<PageKind, Promise<string>>();

/** The page that `ROUTEMARK_BUILT_PAGE` names where the shipped one is wanted; else it is built, once a process. */
export function buildPage(kind: PageKind = 'shipped'): Promise<string> {
  const named = kind === 'shipped' ? process.env.ROUTEMARK_BUILT_PAGE : undefined;
  const page = built.get(kind) ?? (named ? Promise.resolve(named) : buildOwnPage(kind));
  built.set(kind, page);
  return page;
}

/** Built by a process of its own: a test's own NODE_ENV would make another page than the one that is shipped. */
async function buildOwnPage(kind: PageKind): Promise<string> {
  await mkdir(placeBuilds(), { recursive: true });
  const outDir = await mkdtemp(path.join(placeBuilds(), 'page-'));
  const vite = path.join(ROOT, 'node_modules/vite/bin/vite.js');
  const args = [vite, 'build', 'renderer', '--logLevel', 'error', '--outDir', outDir];
  const env = { ...process.env, NODE_ENV: kind === 'shipped' ? 'production' : 'development' };
  await promisify(execFile)(process.execPath, args, { cwd: ROOT, env });
  return outDir;
}

/** Opens a desk on a copy of a lesson and starts a Chromium. */
export async function openTestDesk(options: TestDeskOptions): Promise<TestDesk> {
  const executablePath = findChromium();
  if (!executablePath) throw new Error('no Chromium; check canBrowse first');
  const pageFolder = await buildPage(options.page);
  const home = await mkdtemp(path.join(tmpdir(), 'routemark-browser-'));
  const folder = chooseFolder(options, home);
  if (options.lesson === 'demo') await buildDemoLesson(folder);
  else if (folder !== '' && !options.isInPlace)
    await cp(options.lesson, folder, { recursive: true, preserveTimestamps: true });
  if (options.isLookedAt) await linkDemoEvidence(folder);
  if (options.withoutClips) await rm(path.join(folder, 'clips'), { recursive: true, force: true });
  const host = await openHost(home, pageFolder, folder);
  const browser = await chromium.launch({ executablePath, args: CHROMIUM_ARGS });
  return {
    browser,
    get desk() {
      return host.get().desk;
    },
    folder,
    makeAddress: () => host.get().served.makeAddress(),
    openWindow: (look = {}) => openWindow(browser, host.get().served.makeAddress(), look),
    stopHost: host.stop,
    startHost: host.start,
    close: async () => {
      await browser.close();
      await host.stop();
      await rm(home, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
    },
  };
}

function chooseFolder({ lesson, isInPlace }: TestDeskOptions, home: string): string {
  if (lesson === 'none') return '';
  return isInPlace ? lesson : path.join(home, 'lesson');
}

interface Host {
  readonly desk: Desk;
  readonly served: ServedDesk;
}

async function openHost(home: string, pageFolder: string, folder: string) {
  let host: Host | null = null;
  let port = 0;
  const start = async () => {
    const desk = await openDesk({
      face: 'browser',
      version: '0.0.0',
      home: path.join(home, 'desk'),
      chooseFolders: null,
      filmDemo: async (into, { signal, onProgress }) => {
        await buildDemoLesson(into, {
          signal,
          replace: true,
          onProgress: ({ done, total }) => onProgress({ step: 'film', done, total }),
        });
        await linkDemoEvidence(into);
      },
      onFault: (trace, fault) => process.stderr.write(`fault ${trace}: ${String(fault)}\n`),
    });
    if (folder !== '') await desk.openFirst(folder);
    const served = await serveDesk(desk, { port, pageFolder });
    port = served.port;
    host = { desk, served };
  };
  const stop = async () => {
    await host?.served.close();
    await host?.desk.close();
    host = null;
  };
  const get = (): Host => {
    if (!host) throw new Error('the host was stopped');
    return host;
  };
  await start();
  return { start, stop, get };
}

async function openWindow(browser: Browser, address: string, look: WindowLook): Promise<TestWindow> {
  const { width = 1280, height = 800, theme = 'light', reducedMotion = 'no-preference' } = look;
  const { isWatchingByItself = false } = look;
  const context = await browser.newContext({
    viewport: { width, height },
    colorScheme: theme,
    reducedMotion,
    locale: 'en-CA',
  });
  // How quick the page is, is for the bench to say; here a busy machine may take its time.
  context.setDefaultTimeout(240_000);
  await context.addInitScript((preferences) => {
    localStorage['routemark.preferences'] ??= preferences;
  }, JSON.stringify({ isWatchingByItself }));
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on('pageerror', (error) => complaints.push(String(error.stack ?? error)));
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text());
  });
  context.on('request', (request) => {
    const { protocol, hostname } = new URL(request.url());
    if (/^(http|ws)s?:$/.test(protocol) && hostname !== '127.0.0.1')
      complaints.push(`asked for ${request.url()}`);
  });
  await page.goto(address);
  return { context, page, complaints };
}
