import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { findFfmpeg } from '../../src-core/host/find-ffmpeg.ts';
import { canBrowse, openTestDesk } from '../app/browser.ts';
import { generateLesson } from './generated-lesson.ts';

/** How long each way of moving is kept up. */
const MOVE_MS = 3000;

/** The bar: half of all frames at least come within one turn of a 60 Hz screen. */
const MEDIAN_BAR_MS = 17;

/** As text, for the page knows nothing of this file's own runtime. */
const RECORD_FRAMES = `new Promise((resolve) => {
  const lengths = [];
  const from = performance.now();
  let last = from;
  requestAnimationFrame(function turn(now) {
    lengths.push(now - last);
    last = now;
    if (now - from < ${MOVE_MS}) requestAnimationFrame(turn);
    else resolve(lengths.slice(2));
  });
})`;

/** Pans and zooms Line up with 300 clips in a real browser and prints how long its frames took. */
export async function benchLineUp(print: (line: string) => void): Promise<void> {
  const ffmpeg = await findFfmpeg();
  if (!canBrowse() || !ffmpeg.ok) return;
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
        const verdict = median < MEDIAN_BAR_MS ? 'within' : 'OVER';
        print(
          `Line up, 300 clips, ${way}: median frame ${median.toFixed(1)} ms, 95th percentile ${late.toFixed(1)} ms (${verdict} ${MEDIAN_BAR_MS} ms)`,
        );
      }
    } finally {
      await desk.close();
    }
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

/** Lengths of all frames while the wheel turns, shortest first. */
async function measure(page: Page, way: 'pan' | 'zoom'): Promise<readonly number[]> {
  const frames = page.evaluate<number[]>(RECORD_FRAMES);
  if (way === 'zoom') await page.keyboard.down('Control');
  const until = Date.now() + MOVE_MS;
  for (let step = 0; Date.now() < until; step += 1) {
    await page.mouse.wheel(0, step % 60 < 30 ? 40 : -40);
  }
  if (way === 'zoom') await page.keyboard.up('Control');
  return (await frames).toSorted((one, other) => one - other);
}
