import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { findFfmpeg } from '../../src-core/host/find-ffmpeg.ts';
import { canBrowse, openTestDesk, type TestDesk } from '../app/browser.ts';
import { generateLesson } from './generated-lesson.ts';

/** The bars, in milliseconds. */
const BARS = { key: 50, strip: 100, open: 1000 } as const;

/** Keys that are measured, and how long the teacher looks between two. */
const KEYS = 60;
const LOOK_MS = 350;

/**
 * Measures in the page, as text, for the page knows nothing of this file's own runtime. From a key or press by the
 * browser's own stamp of it, to the end of the frame that paints another clip's title; and to the end of the first
 * frame in which all stills of its strip are decoded.
 */
const RECORDER = `(() => {
  const marks = (window.marks = []);
  let pressed = null;
  const title = () => document.querySelector('.idrow h1')?.textContent ?? '';
  const afterFrame = (then) => requestAnimationFrame(() => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => then(performance.now());
    port2.postMessage(null);
  });
  const press = (event) => { pressed = { at: event.timeStamp, title: title() }; };
  addEventListener('keydown', press, true);
  addEventListener('click', press, true);
  const isStripThere = () => {
    const stills = [...document.querySelectorAll('.reps img')];
    return stills.length >= 20 && stills.every((still) => still.complete && still.naturalWidth > 0);
  };
  new MutationObserver(() => {
    if (!pressed || title() === '' || title() === pressed.title) return;
    const { at } = pressed;
    pressed = null;
    const mark = { key: null, strip: null };
    marks.push(mark);
    afterFrame((now) => { mark.key = now - at; });
    const look = () => (isStripThere() ? afterFrame((now) => { mark.strip = now - at; }) : requestAnimationFrame(look));
    look();
  }).observe(document.body, { childList: true, subtree: true, characterData: true });
})()`;

/** The reference: an empty page of the same browser, whose one word changes at a key. */
const BARE_PAGE = '<!doctype html><title>bare</title><main><div class="idrow"><h1>0</h1></div></main>';
const BARE_KEY = `addEventListener('keydown', () => {
  const title = document.querySelector('h1');
  title.textContent = String(Number(title.textContent) + 1);
})`;

interface Mark {
  readonly key: number | null;
  readonly strip: number | null;
}

/** Marks a lesson of 300 analysed clips in a real browser and prints how long the teacher waits for the machine. */
export async function benchReview(print: (line: string) => void): Promise<void> {
  const ffmpeg = await findFfmpeg();
  if (!canBrowse() || !ffmpeg.ok) return;
  const folder = await mkdtemp(path.join(tmpdir(), 'routemark-bench-review-'));
  try {
    await generateLesson(folder, ffmpeg.value.path, { isWatched: true });
    await measureReview(folder, print);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/** The same with a lesson folder that is there. */
export async function measureReview(folder: string, print: (line: string) => void): Promise<void> {
  const desk = await openTestDesk({ lesson: folder, isInPlace: true });
  try {
    const { page } = await desk.openWindow({ width: 1440, height: 900 });
    const lesson = await waitForRead(desk, page);
    const opened: number[] = [];
    for (let round = 0; round < 5; round += 1) opened.push(await open(page, lesson));
    print(judge('lesson opened, first clip painted', opened, BARS.open));
    await page.evaluate(RECORDER);
    const keys = await collect(page, (at) => page.keyboard.press(at % 10 === 9 ? 'y' : 'Enter'));
    const bare = await measureBare(page);
    const painted = keys.map(({ key }) => key ?? Number.POSITIVE_INFINITY);
    const ratio = getShare(painted, 0.5) / getShare(bare, 0.5);
    print(
      `${judge('key to the next clip painted', painted, BARS.key)}; ${ratio.toFixed(1)} times a key that changes one word of an empty page (${getShare(bare, 0.5).toFixed(0)} ms)`,
    );
    print(judge('its strip of 20 stills', keys.map(getStrip), BARS.strip));
    const holes = page.locator('button.punch:not(.ink):not(.now)');
    const pressed = await collect(page, (at) => holes.nth((at * 37) % 150).click());
    print(judge('any clip of the class card, its strip', pressed.map(getStrip), BARS.strip));
  } finally {
    await desk.close();
  }
}

const getStrip = ({ strip }: Mark) => strip ?? Number.POSITIVE_INFINITY;

function getShare(times: readonly number[], share: number): number {
  return times.toSorted((one, other) => one - other)[Math.floor(times.length * share)] ?? Number.NaN;
}

function judge(what: string, times: readonly number[], bar: number): string {
  const [median, late] = [getShare(times, 0.5), getShare(times, 0.95)];
  const verdict = late < bar ? 'within' : 'OVER';
  return `Review, 300 analysed clips, ${what}: ${median.toFixed(0)} ms (median), ${late.toFixed(0)} ms (95th percentile) (${verdict} ${bar} ms)`;
}

/** Keys in an empty page: what browser, screen and a busy machine take by themselves. */
async function measureBare(page: Page): Promise<readonly number[]> {
  const other = await page.context().newPage();
  await other.setContent(BARE_PAGE);
  await other.evaluate(BARE_KEY);
  await other.evaluate(RECORDER);
  const marks = await collect(other, () => other.keyboard.press('Enter'));
  await other.close();
  await page.bringToFront();
  return marks.map(({ key }) => key ?? Number.POSITIVE_INFINITY);
}

/** Until the host has read and proposed all, and the page shows it. */
async function waitForRead(desk: TestDesk, page: Page): Promise<string> {
  await page.waitForFunction(() => /^#\/[0-9a-f]{16}\//.test(location.hash));
  const lesson = /#\/([0-9a-f]{16})/.exec(page.url())?.[1] ?? '';
  const isRead = async () => (await desk.desk.lessons.find(lesson))?.getView().reading.state === 'read';
  while (!(await isRead())) await page.waitForTimeout(200);
  await page.waitForFunction(() => /\d+ left/.test(document.querySelector('.way')?.textContent ?? ''));
  return lesson;
}

/** From the chooser to the first clip on the desk, its class card beside it, painted. */
async function open(page: Page, lesson: string): Promise<number> {
  await page.evaluate("location.hash = '#/'");
  await page.waitForFunction(() => !document.querySelector('.way'));
  await page.waitForTimeout(300);
  return page.evaluate<number>(`new Promise((resolve) => {
    const from = performance.now();
    location.hash = '#/${lesson}/review';
    const look = () => document.querySelectorAll('.idrow h1, .punch').length > 300
      ? requestAnimationFrame(() => setTimeout(() => resolve(performance.now() - from)))
      : requestAnimationFrame(look);
    look();
  })`);
}

async function collect(page: Page, press: (at: number) => Promise<void>): Promise<readonly Mark[]> {
  await page.locator('.idrow h1').waitFor();
  await page.waitForTimeout(1000);
  await page.evaluate('marks.length = 0');
  for (let at = 0; at < KEYS; at += 1) {
    await press(at);
    await page.waitForTimeout(LOOK_MS);
  }
  return page.evaluate<Mark[]>('marks');
}
