import { mkdir, writeFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import path from 'node:path';
import { type Browser, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, onTestFinished, test } from 'vitest';
import { serveDesk } from '../../src-core/host/loopback/serve-desk.ts';
import { openTestDesk } from '../contract/open-wires.ts';
import { CHROMIUM_ARGS, canBrowse, findChromium } from './browser.ts';

let browser: Browser;

beforeAll(async () => {
  if (!canBrowse()) return;
  browser = await chromium.launch({ executablePath: findChromium() ?? '', args: CHROMIUM_ARGS });
});

afterAll(() => browser?.close());

/** A bare page of the desk's own, let in by its one-time address, and the small lesson's clips. */
async function openBarePage(): Promise<{ page: Page; films: readonly string[]; breaches: string[] }> {
  const { desk, parent, lessonFolder } = await openTestDesk();
  const pageFolder = path.join(parent, 'page');
  await mkdir(pageFolder);
  await writeFile(path.join(pageFolder, 'index.html'), '<!doctype html><title>bare</title>');
  const served = await serveDesk(desk, { port: 0, pageFolder });
  onTestFinished(() => served.close());
  const opened = await desk.lessons.openFolder(lessonFolder);
  if (!opened.ok) throw new Error('the lesson opens');
  const session = opened.value;
  await session.readClips.join({ signal: new AbortController().signal, onProgress: () => {} });
  const context = await browser.newContext();
  onTestFinished(() => context.close());
  const page = await context.newPage();
  const breaches: string[] = [];
  page.on('console', (message) => breaches.push(message.text()));
  await page.goto(served.makeAddress());
  expect(new URL(page.url()).search).toBe('');
  return {
    page,
    films: session.getView().clips.map(({ id }) => `/media/${session.lesson}/${id}/film`),
    breaches,
  };
}

/** Another program's page on this machine, as any local server may have one. */
async function serveOtherPage(): Promise<string> {
  const server = createServer((_, answer) =>
    answer.setHeader('content-type', 'text/html').end('<p>other</p>'),
  );
  onTestFinished(() => void server.close());
  await new Promise<void>((resolve) => {
    server.listen(0, '127.0.0.1', resolve);
  });
  const address = server.address();
  return `http://127.0.0.1:${typeof address === 'object' ? address?.port : 0}/`;
}

/** Loads films side by side, seeks in each, and tells where each came to stand. */
function seekAll(page: Page, films: readonly string[], seconds: number): Promise<readonly number[]> {
  return page.evaluate(
    ([addresses, to]) =>
      Promise.all(
        addresses.map(async (address) => {
          const video = document.createElement('video');
          const wait = (name: string) =>
            new Promise((resolve, reject) => {
              video.addEventListener(name, resolve, { once: true });
              video.addEventListener('error', () => reject(new Error(`${video.error?.message}`)), {
                once: true,
              });
            });
          const loaded = wait('loadedmetadata');
          video.src = address;
          document.body.append(video);
          await loaded;
          const sought = wait('seeked');
          video.currentTime = to;
          await sought;
          return video.currentTime;
        }),
      ),
    [films, seconds] as const,
  );
}

describe.skipIf(!canBrowse())('in a real browser', () => {
  test('a film seeks to where it is asked', async () => {
    const { page, films } = await openBarePage();
    const [at] = await seekAll(page, films.slice(0, 1), 2.5);
    expect(at).toBeCloseTo(2.5, 2);
  });

  test('six films at once leave the calls their way', async () => {
    const { page, films } = await openBarePage();
    expect(await seekAll(page, films, 1)).toHaveLength(6);
    const status = await page.evaluate(() =>
      fetch('/call', {
        method: 'POST',
        headers: { 'x-routemark-page': crypto.randomUUID() },
        body: JSON.stringify({ job: crypto.randomUUID(), name: 'readDesk', input: {} }),
      }).then((reply) => reply.status),
    );
    expect(status).toBe(200);
  });

  test('the page’s policy holds: nothing inline runs, and nothing outside is reached', async () => {
    const { page, breaches } = await openBarePage();
    const ran = await page.evaluate(
      async (other) => {
        const script = document.createElement('script');
        script.textContent = 'globalThis.ran = true';
        document.body.append(script);
        const reached = await fetch(other, { mode: 'no-cors' }).then(
          () => true,
          () => false,
        );
        return { ran: 'ran' in globalThis, reached };
      },
      await serveOtherPage(),
    );
    expect(ran).toEqual({ ran: false, reached: false });
    expect(breaches.filter((text) => text.includes('Content Security Policy')).length).toBeGreaterThanOrEqual(
      2,
    );
  });

  test('another page of this machine gets nothing', async () => {
    const { page, films } = await openBarePage();
    const home = new URL(page.url()).origin;
    const other = await page.context().newPage();
    await other.goto(await serveOtherPage());
    const got = await other.evaluate(
      async ([place, film]) => {
        const video = document.createElement('video');
        const failed = new Promise((resolve) => {
          video.addEventListener('error', () => resolve('refused'), { once: true });
          video.addEventListener('loadedmetadata', () => resolve('played'), { once: true });
        });
        video.src = place + film;
        const call = fetch(`${place}/call`, { method: 'POST', credentials: 'include', body: '{}' });
        const called = call.then(
          () => 'read',
          () => 'refused',
        );
        return [await failed, await called];
      },
      [home, films[0] ?? ''] as const,
    );
    expect(got).toEqual(['refused', 'refused']);
  });
});
