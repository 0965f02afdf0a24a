import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { findFfmpeg } from '../../src-core/host/find-ffmpeg.ts';
import { canBrowse, openTestDesk, type TestDesk } from '../app/browser.ts';
import { generateLesson } from './generated-lesson.ts';
import type { BenchReport } from './report.ts';

/** The bars, in milliseconds. */
const BARS = { key: 50, strip: 100, open: 1000 } as const;

/** Keys that are measured, and how long the teacher looks between two: longer where the machine is not done. */
const KEYS = 60;
const LOOK_MS = 350;
const MOST_MS = 10_000;

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

/** Marks a lesson of 300 analysed clips in a real browser and says how long the teacher waits for the machine. */
export async function benchReview(report: BenchReport): Promise<void> {
  const ffmpeg = await findFfmpeg();
  if (!canBrowse() || !ffmpeg.ok) return report.print('review: skipped, needs Chromium and ffmpeg');
  const folder = await mkdtemp(path.join(tmpdir(), 'routemark-bench-review-'));
  try {
    await generateLesson(folder, ffmpeg.value.path, { isWatched: true });
    await measureReview(folder, report);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/** The same with a lesson folder that is there. */
export async function measureReview(folder: string, report: BenchReport): Promise<void> {
  const desk = await openTestDesk({ lesson: folder, isInPlace: true });
  try {
    const { page } = await desk.openWindow({ width: 1440, height: 900 });
    const lesson = await waitForRead(desk, page);
    const opened: number[] = [];
    for (let round = 0; round < 5; round += 1) opened.push(await open(page, lesson));
    judge(report, 'lesson opened again, first clip painted', { times: opened, bar: BARS.open });
    await page.evaluate(RECORDER);
    const keys = await collect(page, (at) => page.keyboard.press(at % 10 === 9 ? 'y' : 'Enter'));
    const bare = await measureBare(page);
    const painted = keys.map(({ key }) => key ?? Number.POSITIVE_INFINITY);
    judge(report, 'key to the next clip painted', { times: painted, bar: BARS.key });
    const ratio = getShare(painted, 0.5) / getShare(bare, 0.5);
    report.print(
      `that is ${ratio.toFixed(1)} times a key that changes one word of an empty page (${getShare(bare, 0.5).toFixed(0)} ms)`,
    );
    judge(report, 'its strip of 20 stills', { times: keys.map(getStrip), bar: BARS.strip });
    const holes = page.locator('button.punch:not(.ink):not(.now)');
    const pressed = await collect(page, (at) => holes.nth((at * 37) % 150).click());
    judge(report, 'any clip of the class card, its strip', { times: pressed.map(getStrip), bar: BARS.strip });
    const cold: number[] = [];
    for (let round = 0; round < 3; round += 1) cold.push(await openCold(desk, page, lesson));
    judge(report, 'program and page started anew, first clip painted', { times: cold, bar: BARS.open });
  } finally {
    await desk.close();
  }
}

const getStrip = ({ strip }: Mark) => strip ?? Number.POSITIVE_INFINITY;

function getShare(times: readonly number[], share: number): number {
  return times.toSorted((one, other) => one - other)[Math.floor(times.length * share)] ?? Number.NaN;
}

function judge(
  { print, hold }: BenchReport,
  what: string,
  { times, bar }: { readonly times: readonly number[]; readonly bar: number },
): void {
  const name = `Review, 300 analysed clips, ${what}`;
  print(`${name}: ${getShare(times, 0.5).toFixed(0)} ms (median)`);
  hold({
    what: `${name}, ms (95th percentile)`,
    figure: getShare(times, 0.95),
    bar: ['at most', bar],
    digits: 0,
  });
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

/** Resolves with the page's own time when the first clip is on the desk, its class card beside it, painted. */
const FIRST_CLIP = `new Promise((resolve) => {
  const look = () => document.querySelectorAll('.idrow h1, .punch').length > 300
    ? requestAnimationFrame(() => setTimeout(() => resolve(performance.now())))
    : requestAnimationFrame(look);
  look();
})`;

/** From the chooser, in a page that has shown the lesson before. */
async function open(page: Page, lesson: string): Promise<number> {
  await page.evaluate("location.hash = '#/'");
  await page.waitForFunction(() => !document.querySelector('.way'));
  await page.waitForTimeout(300);
  const from = await page.evaluate<number>(`location.hash = '#/${lesson}/review'; performance.now()`);
  return (await page.evaluate<number>(FIRST_CLIP)) - from;
}

/** From the page's first request to a program that has just started and holds nothing of the lesson in memory. */
async function openCold(desk: TestDesk, page: Page, lesson: string): Promise<number> {
  const { origin } = new URL(page.url());
  await page.goto('about:blank');
  await desk.stopHost();
  await desk.startHost();
  await page.goto(`${origin}/#/${lesson}/review`, { waitUntil: 'commit' });
  return page.evaluate<number>(FIRST_CLIP);
}

/** A mark for every press, none lost: the next press waits until this one's clip stands. */
async function collect(page: Page, press: (at: number) => Promise<void>): Promise<readonly Mark[]> {
  await page.locator('.idrow h1').waitFor();
  await page.waitForTimeout(1000);
  await page.evaluate('marks.length = 0');
  for (let at = 0; at < KEYS; at += 1) {
    await press(at);
    await page.waitForTimeout(LOOK_MS);
    await page.waitForFunction(`marks[${at}]?.key != null`, null, { timeout: MOST_MS });
  }
  const marks = await page.evaluate<Mark[]>('marks');
  if (marks.length !== KEYS) throw new Error(`${marks.length} marks of ${KEYS} presses`);
  return marks;
}
