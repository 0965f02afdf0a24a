import { execFile } from 'node:child_process';
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { gradeLesson } from '../../src-core/app/grade-lesson.ts';
import { openLesson } from '../../src-core/app/open-lesson.ts';
import { findFfmpeg } from '../../src-core/host/find-ffmpeg.ts';
import { openLessonPorts } from '../../src-core/host/lesson-ports.ts';
import { findBarriers } from './axe.ts';
import { canBrowse, openTestDesk, type TestDesk, type TestWindow, type WindowLook } from './browser.ts';

const HARBOUR = fileURLToPath(new URL('../../fixtures/harbour', import.meta.url));
/** The bell of the harbour's third period, 10:40 in Halifax. */
const BELL_MS = Date.parse('2025-05-15T13:40:00Z');
const MINUTE_MS = 60_000;

describe.runIf(canBrowse())('the class clock', () => {
  let desk: TestDesk;

  beforeAll(async () => {
    desk = await openTestDesk({ lesson: HARBOUR, withoutClips: true });
  });
  afterAll(() => desk?.close());

  /** Sets the machine's clock, and waits for the page to have looked at it. */
  const setClock = async (page: Page, ms: number) => {
    await page.clock.setFixedTime(ms);
    // As after a sleep: a page that looked earlier in this very second would be ahead of it.
    await page.evaluate(() => document.dispatchEvent(new Event('visibilitychange')));
    const local = new Date(ms - 3 * 60 * MINUTE_MS).toISOString().slice(11, 19);
    await page.getByRole('img', { name: local }).waitFor();
  };
  /** The class clock of the harbour lesson, opened from Plan, on a machine whose clock stands still at an instant. */
  const openClock = async (ms: number, look: WindowLook = {}): Promise<TestWindow> => {
    const window = await desk.openWindow(look);
    const { page } = window;
    await page.locator('.mast').waitFor();
    await page.clock.install({ time: ms });
    await page.reload();
    await page.locator('.mast').waitFor();
    await page.keyboard.press('Control+1');
    await page.getByRole('button', { name: 'Class clock' }).click();
    await page.locator('.class-clock').waitFor();
    await setClock(page, ms);
    return window;
  };
  const figures = (page: Page) => page.getByRole('timer').textContent();
  const squads = (page: Page) => page.getByRole('list', { name: 'Where each squad is' }).textContent();

  test.each([
    ['light', 1280, 800],
    ['dark', 1920, 1080],
    ['light', 800, 1100],
  ] as const)('stands no one in the way, %s at %d × %d', async (theme, width, height) => {
    const { page, complaints, context } = await openClock(BELL_MS + 20 * MINUTE_MS, { theme, width, height });
    expect(await findBarriers(page)).toEqual([]);
    expect(complaints).toEqual([]);
    await context.close();
  });

  test('counts down by the bell, through a sleep of the machine', async () => {
    const { page, context } = await openClock(BELL_MS - 30_000);
    await setClock(page, BELL_MS - 20_000);
    expect(await figures(page)).toBe('0:20');
    expect(await squads(page)).toContain('begins at Rope Store');
    await setClock(page, BELL_MS + 6 * MINUTE_MS);
    // Six slots share what warm-up and clear-up leave of 45 minutes: 5:40 each.
    expect(await figures(page)).toBe('5:40');
    expect(await page.getByRole('status').textContent()).toBe('slot 1 of 6');
    // The lid is shut for the best part of two slots; nothing ran meanwhile.
    await setClock(page, BELL_MS + 16 * MINUTE_MS);
    expect(await page.getByRole('status').textContent()).toBe('slot 2 of 6');
    expect(await figures(page)).toBe('1:20');
    expect(await squads(page)).toMatch(/B\s*Teal\s*Tide Post.*C\s*Amber\s*Gull Wall/);
    expect(await page.getByRole('alert').textContent()).toMatch(/jumped ahead by .* or the machine slept/);
    await page.getByRole('button', { name: 'It is right' }).click();
    expect(await page.getByRole('alert').count()).toBe(0);
    await setClock(page, BELL_MS + 45 * MINUTE_MS);
    expect(await page.getByRole('status').textContent()).toBe('class is over');
    await context.close();
  });

  test('is started now, shifted and closed by keys, and a reload keeps the shift', async () => {
    const { page, context } = await openClock(BELL_MS + 24 * 60 * MINUTE_MS);
    expect(await page.getByRole('status').textContent()).toBe('class is over');
    await page.keyboard.press('s');
    await page.getByText('6:00').waitFor();
    await page.keyboard.press('-');
    await page.getByText('5:00').waitFor();
    // The address follows what is painted.
    await page.waitForURL(/plan\/class-clock%2B86340$/);
    await page.reload();
    await page.getByText('5:00').waitFor();
    await page.keyboard.press('Escape');
    await page.locator('main.plan').waitFor();
    await context.close();
  });

  test('fills the screen when told to, and gives it back when closed', async () => {
    const { page, context, complaints } = await openClock(BELL_MS);
    const isWhole = () => page.evaluate(() => document.fullscreenElement !== null);
    await page.getByRole('button', { name: /^Whole screen/ }).click();
    await expect.poll(isWhole).toBe(true);
    await page.getByRole('button', { name: /^Close/ }).click();
    await expect.poll(isWhole).toBe(false);
    expect(complaints).toEqual([]);
    await context.close();
  });

  test('sounds at the turn of each part once its sound is on, and not before', async () => {
    const { page, context } = await openClock(BELL_MS - 30_000);
    await page.evaluate(() => {
      const { start } = OscillatorNode.prototype;
      Object.assign(window, { sounded: 0 });
      OscillatorNode.prototype.start = function (...times) {
        Object.assign(window, { sounded: Number(Reflect.get(window, 'sounded')) + 1 });
        start.apply(this, times);
      };
    });
    const sounded = () => page.evaluate(() => Reflect.get(window, 'sounded'));
    await setClock(page, BELL_MS);
    expect(await sounded()).toBe(0);
    // Switching it on lets it be heard once.
    await page.getByRole('button', { name: /^Sound off/ }).click();
    expect(await sounded()).toBe(1);
    await setClock(page, BELL_MS + 6 * MINUTE_MS);
    await expect.poll(sounded).toBe(2);
    await setClock(page, BELL_MS + 7 * MINUTE_MS);
    expect(await sounded()).toBe(2);
    await context.close();
  });

  test('says from how far its code is read, and that three metres take a larger screen', async () => {
    const { page, context } = await openClock(BELL_MS);
    const code = page.getByRole('img', { name: /Code of the instant/ });
    const width = (await code.boundingBox())?.width ?? 0;
    const said = (await page.locator('.cc-code').textContent()) ?? '';
    // Of 29 modules across, 8 are the quiet zone; 96 pixels are an inch (CSS Values and Units 4, 6.2).
    const centimetres = Number(/no more than (\d+) cm/.exec(said)?.[1]);
    expect(centimetres).toBeLessThanOrEqual(((width * 21) / 29 / 96) * 2.54 * 10);
    expect(centimetres).toBeGreaterThanOrEqual(70);
    expect(said).toContain('For 3 m it must be 30 cm wide');
    await context.close();
  });

  test('filmed by a tablet from three metres, tells that tablet’s clock to within a second', async () => {
    const slowSeconds = 37;
    const trueStartMs = BELL_MS + 2 * MINUTE_MS + 400;
    const { page, context } = await openClock(trueStartMs - 10_000, { width: 1280, height: 720 });
    const folder = await mkdtemp(path.join(tmpdir(), 'routemark-clock-'));
    const image = page.getByRole('img', { name: /Code of the instant/ });
    // Its symbol, 21 of 29 modules, is 30 cm wide; a lens of 60° has 1920 pixels for what is 3 m away.
    const symbol = (((await image.boundingBox())?.width ?? 0) * 21) / 29;
    const scale = (0.3 * 1920) / (2 * Math.tan(Math.PI / 6) * 3) / symbol;
    const shots: string[] = [];
    for (let second = 0; second < 4; second++) {
      await setClock(page, Math.floor(trueStartMs / 1000) * 1000 + second * 1000);
      const file = path.join(folder, `${second}.png`);
      await page.screenshot({ path: file });
      // The film begins 0.4 s into the first second.
      shots.push(`file '${file}'\nduration ${second === 0 ? 0.6 : 1}\n`);
    }
    await context.close();
    const clips = path.join(desk.folder, 'clips', 'Teal');
    await mkdir(clips, { recursive: true });
    await filmScreen(
      { list: shots.join(''), scale },
      path.join(clips, 'IMG_0001.MOV'),
      trueStartMs - slowSeconds * 1000,
    );
    const ports = openLessonPorts({ folder: desk.folder, signal: new AbortController().signal });
    const lesson = await openLesson(ports);
    if (!lesson.ok) throw new Error(JSON.stringify(lesson.problems));
    const job = { signal: new AbortController().signal, onProgress: () => {} };
    const { squads: graded } = await gradeLesson(ports, lesson.value, job);
    const teal = graded.find(({ squad }) => squad.code === 'teal');
    expect(teal?.clock.from).toBe('clock-film');
    expect(Math.abs((teal?.clock.offsetSeconds ?? 0) - slowSeconds)).toBeLessThan(1);
    await rm(folder, { recursive: true, force: true });
  });
});

/** Films a screen as a tablet of that clock would: at an angle, with sensor noise, dated at its start. */
async function filmScreen(
  { list, scale }: { readonly list: string; readonly scale: number },
  clip: string,
  tabletStartMs: number,
): Promise<void> {
  const ffmpeg = await findFfmpeg();
  if (!ffmpeg.ok) throw new Error('these tests need ffmpeg');
  const listFile = `${clip}.txt`;
  await writeFile(listFile, list);
  const local = new Date(tabletStartMs - 3 * 60 * MINUTE_MS).toISOString().slice(0, 19);
  const filters = [
    'fps=10',
    `scale=trunc(iw*${scale}/2)*2:trunc(ih*${scale}/2)*2`,
    'pad=1920:1080:(ow-iw)/2:(oh-ih)/2:color=gray',
    'perspective=x0=0.04*W:y0=0.03*H:x1=W:y1=0:x2=0:y2=H:x3=0.94*W:y3=0.96*H:sense=destination',
    'gblur=sigma=0.7',
    'noise=alls=12:allf=t',
  ];
  const dates = ['-movflags', 'use_metadata_tags'];
  const apple = {
    make: 'Skerry',
    model: 'Dunlin 8',
    software: '8.1',
    creationdate: `${local}-0300`,
  };
  for (const [key, value] of Object.entries(apple))
    dates.push('-metadata', `com.apple.quicktime.${key}=${value}`);
  const encode = ['-c:v', 'libx264', '-preset', 'ultrafast', '-pix_fmt', 'yuv420p'];
  const input = ['-f', 'concat', '-safe', '0', '-i', listFile, '-t', '3.6'];
  await promisify(execFile)(ffmpeg.value.path, [
    '-v',
    'error',
    '-y',
    ...input,
    '-vf',
    filters.join(','),
    ...encode,
    ...dates,
    clip,
  ]);
  await rm(listFile);
}
