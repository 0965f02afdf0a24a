import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { _electron, type ElectronApplication, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { LessonView } from '../../src-core/contract/lesson-view.ts';
import { writeSmallLesson } from '../contract/small-lesson.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

/** Electron's program; null where its binary was not fetched. */
function findElectron(): string | null {
  const folder = path.join(ROOT, 'node_modules', 'electron');
  const named = process.env.ROUTEMARK_ELECTRON;
  if (named) return named;
  if (!existsSync(path.join(folder, 'path.txt'))) return null;
  const program = path.join(folder, 'dist', readFileSync(path.join(folder, 'path.txt'), 'utf8'));
  return existsSync(program) ? program : null;
}

const program = findElectron();
const hasScreen = process.platform !== 'linux' || Boolean(process.env.DISPLAY || process.env.WAYLAND_DISPLAY);
const reason = program === null ? 'Electron’s binary is not here' : hasScreen ? null : 'there is no screen';
if (reason) process.stderr.write(`Skipped: ${reason}; npm start fetches it where it can.\n`);

function build(...args: readonly string[]): void {
  const built = spawnSync(process.execPath, args, { cwd: ROOT, stdio: 'inherit' });
  if (built.status !== 0) throw new Error(`${args.join(' ')} failed`);
}

describe.skipIf(reason !== null)('the desktop shell', () => {
  let parent = '';
  let app: ElectronApplication;
  let page: Page;

  beforeAll(async () => {
    build('node_modules/vite/bin/vite.js', 'build', 'renderer', '--logLevel', 'warn');
    build('--import', 'tsx', 'electron/packaging/build-shell.ts');
    parent = await mkdtemp(path.join(tmpdir(), 'routemark-shell-'));
    const lesson = path.join(parent, 'lesson');
    await writeSmallLesson(lesson);
    // So that the shell has to look at the clips itself.
    await rm(path.join(lesson, 'evidence'), { recursive: true });
    app = await _electron.launch({
      executablePath: program ?? '',
      args: ['.', lesson],
      cwd: ROOT,
      env: { ...process.env, ROUTEMARK_HOME: path.join(parent, 'home') } as Record<string, string>,
    });
    page = await app.firstWindow();
  });

  afterAll(async () => {
    await app?.close();
    await rm(parent, { recursive: true, force: true });
  });

  /** Asks as the page would. */
  const request = (name: string, input: object): Promise<never> =>
    page.evaluate(
      ([asked, given]) => {
        const { routemark } = globalThis as unknown as {
          routemark: { request: (message: object) => Promise<never> };
        };
        return routemark.request({ job: crypto.randomUUID(), name: asked, input: given });
      },
      [name, input] as const,
    );

  test('gives the page three functions and nothing of Node or Electron', async () => {
    const found = await page.evaluate(() => {
      const world = globalThis as unknown as Record<string, object | undefined>;
      return {
        bridge: Object.keys(world.routemark ?? {}).sort(),
        others: ['require', 'process', 'module', 'Buffer', 'electron'].filter(
          (name) => world[name] !== undefined,
        ),
      };
    });
    expect(found).toEqual({ bridge: ['cancel', 'request', 'subscribe'], others: [] });
  });

  test('keeps every window apart and boxed in', async () => {
    const preferences = await app.evaluate(({ BrowserWindow }) => {
      const [window] = BrowserWindow.getAllWindows();
      const contents = window?.webContents as unknown as { getLastWebPreferences: () => object };
      return contents.getLastWebPreferences();
    });
    expect(preferences).toMatchObject({
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      webviewTag: false,
    });
    const within = await page.evaluate(() => {
      const frame = document.body.appendChild(document.createElement('iframe'));
      const inFrame = frame.contentWindow as unknown as Record<string, unknown> | null;
      const guest = document.createElement('webview') as unknown as Record<string, unknown>;
      const found = { bridge: typeof inFrame?.routemark, guest: typeof guest.loadURL };
      frame.remove();
      return found;
    });
    expect(within).toEqual({ bridge: 'undefined', guest: 'undefined' });
  });

  test('runs no script but its own, by the policy that its page came with', async () => {
    const found = await page.evaluate(async () => {
      const { headers } = await fetch('/');
      const script = document.createElement('script');
      script.textContent = 'document.title = "it ran"';
      document.head.append(script);
      script.remove();
      return { policy: headers.get('content-security-policy') ?? '', title: document.title };
    });
    expect(found.policy).toMatch(/^default-src 'none'; /);
    expect(found.title).not.toBe('it ran');
  });

  test('hands out no camera and no device, saves no file, and fills the screen alone', async () => {
    await app.evaluate(({ session }) => {
      const seen = globalThis as unknown as { downloads: boolean[] };
      seen.downloads = [];
      // After our own listener, so that what it has said is seen.
      session.defaultSession.on('will-download', (event) => seen.downloads.push(event.defaultPrevented));
    });
    const found = await page.evaluate(async () => {
      const refused = (asked: Promise<unknown>) =>
        asked.then(
          () => 'given',
          () => 'refused',
        );
      const { hid } = navigator as unknown as { hid: { getDevices: () => Promise<unknown[]> } };
      const link = document.createElement('a');
      link.href = URL.createObjectURL(new Blob(['x']));
      link.download = 'x.txt';
      link.click();
      await document.documentElement.requestFullscreen();
      const isFull = document.fullscreenElement !== null;
      await document.exitFullscreen();
      return {
        camera: await refused(navigator.mediaDevices.getUserMedia({ video: true })),
        devices: (await hid.getDevices()).length,
        isFull,
      };
    });
    expect(found).toEqual({ camera: 'refused', devices: 0, isFull: true });
    await expect
      .poll(() => app.evaluate(() => (globalThis as unknown as { downloads: boolean[] }).downloads))
      .toEqual([true]);
  });

  test('answers the page, and nothing that the list does not name', async () => {
    expect(await request('readDesk', {})).toMatchObject({
      ok: true,
      value: { face: 'window', hasFolderDialog: true },
    });
    expect(await request('__proto__', {})).toMatchObject({ ok: false, problems: [{ code: 'call-unknown' }] });
  });

  test('goes nowhere, opens nothing, and reaches no network', async () => {
    const before = page.url();
    expect(await page.evaluate(() => window.open('https://example.com/'))).toBeNull();
    await app.evaluate(({ BrowserWindow }) => {
      const seen = globalThis as unknown as { goings: boolean[] };
      seen.goings = [];
      const [window] = BrowserWindow.getAllWindows();
      // After our own listener, so that what it has said is seen.
      window?.webContents.on('will-navigate', (event) => seen.goings.push(event.defaultPrevented));
    });
    await page.evaluate(() => {
      location.href = 'https://example.com/';
    });
    await expect
      .poll(() => app.evaluate(() => (globalThis as unknown as { goings: boolean[] }).goings))
      .toEqual([true]);
    expect(page.url()).toBe(before);
    expect(await request('readDesk', {})).toMatchObject({ ok: true });
    expect(
      await page.evaluate(() =>
        fetch('https://example.com/').then(
          () => 'reached',
          () => 'refused',
        ),
      ),
    ).toBe('refused');
    expect(await page.evaluate(() => Notification.requestPermission())).toBe('denied');
  });

  test('looks at every clip in threads of its own', async () => {
    const desk = (await request('readDesk', {})) as { value: { openFirst: string } };
    const read = (await request('readClips', { lesson: desk.value.openFirst, since: null })) as {
      value: { update: { view: LessonView } };
    };
    const { clips, problems } = read.value.update.view;
    expect(clips.map(({ isSearched }) => isSearched)).toEqual(clips.map(() => true));
    expect(problems).toEqual([]);
    const found = await readdir(path.join(parent, 'lesson', 'evidence'));
    expect(found.filter((name) => name.endsWith('.look.json'))).toHaveLength(clips.length);
  });

  test('plays a clip by its id and seeks in it', async () => {
    const desk = (await request('readDesk', {})) as { value: { openFirst: string } };
    const lesson = desk.value.openFirst;
    const read = (await request('readClips', { lesson, since: null })) as {
      value: { update: { view: LessonView } };
    };
    const clip = read.value.update.view.clips[0]?.id ?? '';
    const at = await page.evaluate(async (address) => {
      const video = document.createElement('video');
      video.src = address;
      await new Promise((resolve, reject) => {
        video.addEventListener('loadedmetadata', resolve, { once: true });
        video.addEventListener('error', reject, { once: true });
      });
      video.currentTime = 2;
      await new Promise((resolve) => {
        video.addEventListener('seeked', resolve, { once: true });
      });
      return video.currentTime;
    }, `/media/${lesson}/${clip}/film`);
    expect(at).toBeCloseTo(2, 1);
  });
});
