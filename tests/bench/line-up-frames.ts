import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { findFfmpeg } from '../../src-core/host/find-ffmpeg.ts';
import { canBrowse, openTestDesk } from '../app/browser.ts';
import { generateLesson } from './generated-lesson.ts';
import type { BenchReport } from './report.ts';

/** How long each way of moving is kept up. */
const MOVE_MS = 3000;

/** The bar: half of all frames at least come within one turn of a 60 Hz screen. */
const MEDIAN_BAR_MS = 17;

/** Turns of the wheel one way before it turns back: never so many that the loom comes to an end. */
const SAME_WAY = 8;

/** Fewer frames that moved than this, and the loom as good as stood still. */
const LEAST_MOVES = 10;

/**
 * Lengths of the frames in which the loom stood elsewhere or had another height than in the one before; frames in which
 * it rested say nothing. As text, for the page knows nothing of this file's own runtime.
 */
const RECORD_MOVES = `new Promise((resolve) => {
  const loom = document.querySelector('.loom');
  const read = () => loom.scrollTop + ' ' + loom.scrollHeight;
  const lengths = [];
  const from = performance.now();
  let [last, was] = [from, read()];
  requestAnimationFrame(function turn(now) {
    const is = read();
    if (is !== was) lengths.push(now - last);
    [last, was] = [now, is];
    if (now - from < ${MOVE_MS}) requestAnimationFrame(turn);
    else resolve(lengths);
  });
})`;

/** Pans and zooms Line up with 300 clips in a real browser and says how long its frames took. */
export async function benchLineUp({ print, hold }: BenchReport): Promise<void> {
  const ffmpeg = await findFfmpeg();
  if (!canBrowse() || !ffmpeg.ok) return print('line-up: skipped, needs Chromium and ffmpeg');
  const folder = await mkdtemp(path.join(tmpdir(), 'routemark-bench-line-up-'));
  try {
    await generateLesson(folder, ffmpeg.value.path);
    const desk = await openTestDesk({ lesson: folder });
    try {
      const { page } = await desk.openWindow({ width: 1440, height: 900 });
      await page.waitForFunction(() => document.querySelectorAll('.tray').length > 0);
      await page.waitForFunction(() => !document.querySelector('.run'));
      await page.keyboard.press('Control+3');
      await page.waitForFunction(() => document.querySelectorAll('.tk').length >= 300);
      await page.getByRole('button', { name: '15 min' }).click();
      await page.waitForTimeout(500);
      const box = await page.locator('.loom').boundingBox();
      await page.mouse.move((box?.x ?? 0) + 400, (box?.y ?? 0) + 300);
      for (const way of ['pan', 'zoom'] as const) {
        const frames = await measure(page, way);
        const median = frames[Math.floor(frames.length / 2)] ?? 0;
        const late = frames[Math.floor(frames.length * 0.95)] ?? 0;
        print(`Line up, 300 clips, ${way}: 95th percentile of frames ${late.toFixed(1)} ms`);
        const what = `Line up, 300 clips, ${way}, ms a frame (median)`;
        hold({ what, figure: median, bar: ['at most', MEDIAN_BAR_MS], digits: 1 });
      }
    } finally {
      await desk.close();
    }
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/** Lengths of the frames that moved while the wheel turned to and fro, shortest first. */
async function measure(page: Page, way: 'pan' | 'zoom'): Promise<readonly number[]> {
  const moved = page.evaluate<number[]>(RECORD_MOVES);
  if (way === 'zoom') await page.keyboard.down('Control');
  const until = Date.now() + MOVE_MS;
  for (let step = 0; Date.now() < until; step += 1) {
    await page.mouse.wheel(0, step % (2 * SAME_WAY) < SAME_WAY ? 40 : -40);
  }
  if (way === 'zoom') await page.keyboard.up('Control');
  const lengths = await moved;
  if (lengths.length < LEAST_MOVES)
    throw new Error(`the loom did not ${way}: ${lengths.length} frames moved`);
  return lengths.toSorted((one, other) => one - other);
}
