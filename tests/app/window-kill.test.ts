import { type ChildProcess, spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { mkdir } from 'node:fs/promises';
import path from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { type BrowserContext, chromium, type Page } from 'playwright-core';
import { describe, expect, onTestFinished, test } from 'vitest';
import { parseJournal } from '../../src-core/lesson-file/journal-file.ts';
import { seededRandom } from '../../src-core/platform/seeded-random.ts';
import { writeSmallLesson } from '../contract/small-lesson.ts';
import { makeTemporaryFolder } from '../unit/host/temporary-folder.ts';
import { buildPage, CHROMIUM_ARGS, canBrowse, findChromium } from './browser.ts';
import { bundleProgram } from './bundle-program.ts';

const KILLS = 50;

interface Host {
  readonly child: ChildProcess;
  readonly port: string;
  readonly address: string;
}

/** Starts the desk as a process of its own and waits until it serves. */
async function startHost(args: readonly string[]): Promise<Host> {
  const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'inherit'] });
  onTestFinished(() => void child.kill('SIGKILL'));
  const line = await new Promise<string>((resolve, reject) => {
    child.stdout?.setEncoding('utf8').once('data', resolve);
    child.once('close', (code) => reject(new Error(`the desk ended with ${code}`)));
  });
  const [port = '', address = ''] = line.trim().split(' ');
  return { child, port, address };
}

async function killHost({ child }: Host): Promise<void> {
  const closed = new Promise((resolve) => child.once('close', resolve));
  child.kill('SIGKILL');
  await closed;
}

/** A page at Review; what the host acknowledges to it is added to `acknowledged`. */
async function openReview(context: BrowserContext, address: string, acknowledged: string[]): Promise<Page> {
  const page = await context.newPage();
  page.on('response', async (response) => {
    if (!response.url().endsWith('/call')) return;
    const reply = await response.json().catch(() => null);
    if (reply?.ok && Array.isArray(reply.value?.acknowledged)) acknowledged.push(...reply.value.acknowledged);
  });
  await page.goto(address);
  await page.waitForFunction(() => /^#\/[0-9a-f]{16}\//.test(location.hash));
  await page.evaluate("location.hash = location.hash.replace(/^(#.[0-9a-f]{16}).*/, '$1/review')");
  await page.locator('.cr').first().waitFor();
  return page;
}

/** Turns the first criterion round and round, a decision each, until the page or the test says stop. */
async function decideFor(page: Page, ms: number): Promise<void> {
  const until = performance.now() + ms;
  do await page.keyboard.press('1').catch(() => {});
  while (performance.now() < until);
}

describe.skipIf(!canBrowse())('a window and its host', () => {
  test(`killed in turns at ${KILLS} moments of marking lose no acknowledged decision`, async () => {
    const parent = makeTemporaryFolder();
    const lesson = path.join(parent, 'lesson');
    await mkdir(lesson);
    await writeSmallLesson(lesson);
    const program = bundleProgram(new URL('./desk-server.ts', import.meta.url));
    const args = [program, lesson, path.join(parent, 'home'), await buildPage()];
    const browser = await chromium.launch({ executablePath: findChromium() ?? '', args: CHROMIUM_ARGS });
    onTestFinished(() => browser.close());
    const context = await browser.newContext({ locale: 'en-CA' });
    const acknowledged: string[] = [];
    let host = await startHost(args);
    const { port } = host;
    const home = `http://127.0.0.1:${port}/`;
    let page = await openReview(context, host.address, acknowledged);
    const url = page.url();
    const random = seededRandom(67);
    for (let killed = 0; killed < KILLS; killed += 1) {
      await decideFor(page, random() * 250);
      if (killed % 2 === 0) {
        await killHost(host);
        await decideFor(page, random() * 100);
        host = await startHost([...args, port]);
      } else {
        // A crash of the page's process: it has no time for a last word.
        const session = await context.newCDPSession(page);
        void session.send('Page.crash').catch(() => {});
        await sleep(20);
        await page.close();
        page = await openReview(context, url.startsWith(home) ? url : home, acknowledged);
      }
    }
    await page
      .locator('.foot')
      .filter({ hasText: /Saved \d/ })
      .waitFor();
    const journal = parseJournal(readFileSync(path.join(lesson, 'marks.jsonl'), 'utf8'));
    if (!journal.ok) throw new Error('the journal can be read');
    const kept = journal.value.map(({ id }) => id);
    expect(acknowledged.filter((id) => !kept.includes(id))).toEqual([]);
    expect(new Set(kept).size).toBe(kept.length);
    expect(journal.problems.filter(({ code }) => code !== 'journal-line-torn')).toEqual([]);
    expect(acknowledged.length).toBeGreaterThan(KILLS / 2);
    // What the last window shows is what the journal says.
    const shown = await page.locator('.cr').first().locator('input').first().isChecked();
    const last = journal.value.findLast(({ what }) => what.kind === 'criterion-marked');
    expect(last?.what).toMatchObject({ met: shown });
  }, 900_000);
});
