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
  const say = (what: string, times: readonly number[], bar: number) => {
    const at = (share: number) =>
      times.toSorted((a, b) => a - b)[Math.floor(times.length * share)] ?? Number.NaN;
    const verdict = at(0.95) < bar ? 'within' : 'OVER';
    print(
      `${what}: ${at(0.5).toFixed(0)} ms (median), ${at(0.95).toFixed(0)} ms (95th percentile) (${verdict} ${bar} ms)`,
    );
  };
  try {
    const { page } = await desk.openWindow({ width: 1440, height: 900 });
    const lesson = await waitForRead(desk, page);
    const opened: number[] = [];
    for (let round = 0; round < 5; round += 1) opened.push(await open(page, lesson));
    say('Review, 300 analysed clips, lesson opened', opened, BARS.open);
    await page.evaluate(RECORDER);
    const byKey = await collect(page, async (at) => page.keyboard.press(at % 10 === 9 ? 'y' : 'Enter'));
    say(
      'Review, 300 analysed clips, key to the next clip painted',
      byKey.map(({ key }) => key ?? Infinity),
      BARS.key,
    );
    say(
      'Review, its strip of 20 stills',
      byKey.map(({ strip }) => strip ?? Infinity),
      BARS.strip,
    );
    const holes = page.locator('button.punch:not(.ink):not(.now)');
    const byHand = await collect(page, async (at) => holes.nth((at * 37) % 150).click());
    say(
      'Review, any clip pressed on the class card, its strip',
      byHand.map(({ strip }) => strip ?? Infinity),
      BARS.strip,
    );
  } finally {
    await desk.close();
  }
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
