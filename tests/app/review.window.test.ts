import { cp, mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { findBarriers } from './axe.ts';
import { canBrowse, openTestDesk, type TestDesk } from './browser.ts';
import { STARTS_AT_SECONDS, writeMovingLesson } from './moving-lesson.ts';

describe.skipIf(!canBrowse())('Review', () => {
  let parent: string;
  let desk: TestDesk;

  beforeAll(async () => {
    parent = await mkdtemp(path.join(tmpdir(), 'routemark-review-'));
    await writeMovingLesson(path.join(parent, 'lesson'));
    desk = await openTestDesk({ lesson: path.join(parent, 'lesson') });
  });

  afterAll(async () => {
    await desk.close();
    await rm(parent, { recursive: true, force: true });
  });

  // What the shell's menu asks for is heard by every window that is open.
  const open: { readonly close: () => Promise<void> }[] = [];
  afterEach(async () => {
    for (const window of open.splice(0)) await window.close();
  });

  const openReview = async (theme: 'light' | 'dark', isWatchingByItself = true) => {
    const { page, complaints, context } = await desk.openWindow({ theme, isWatchingByItself });
    open.push(context);
    await page.waitForFunction(() => /^#\/[0-9a-f]{16}\//.test(location.hash));
    await page
      .locator('.way')
      .filter({ hasText: /\d+ left/ })
      .waitFor();
    await page.keyboard.press('Control+4');
    await page.locator('.idrow h1').waitFor();
    return { page, complaints };
  };
  const readLanes = async (page: Page) => {
    const [, lesson = ''] = /#\/([0-9a-f]{16})/.exec(page.url()) ?? [];
    const view = (await desk.desk.lessons.find(lesson))?.getView();
    return view?.clips.map(({ word }) => word.lanes).find((lanes) => lanes !== null);
  };
  /** All that can be read or heard of the page. */
  const readAll = (page: Page) =>
    page.evaluate(() => {
      const parts = [...document.querySelectorAll('[aria-label], [title], [alt]')].flatMap((part) =>
        ['aria-label', 'title', 'alt'].map((name) => part.getAttribute(name) ?? ''),
      );
      return [document.title, document.body.textContent, ...parts].join('\n');
    });
  const countOf = (page: Page, selector: string) => page.locator(selector).count();

  test('says which answer stands against confirming, and stays there', async () => {
    // Not watched yet, so that nothing is proposed for this one.
    const { page, complaints } = await openReview('light', false);
    await page.getByRole('button', { name: /^teal, station B:/ }).click();
    const title = await page.locator('.idrow h1').textContent();
    const said = page.getByRole('status').filter({ hasText: 'Together has no answer yet' });
    expect(await said.count()).toBe(0);
    await page.keyboard.press('Enter');
    await said.waitFor();
    expect(await page.locator('.idrow h1').textContent()).toBe(title);
    await page.keyboard.press('2');
    await said.waitFor({ state: 'detached' });
    await page.keyboard.press('Control+z');
    await page.getByText('? of').first().waitFor();
    expect(complaints).toEqual([]);
  });

  test('draws what was seen beside the film once the clips were watched, and marks all the while', async () => {
    const { page, complaints } = await openReview('light');
    await page.locator('.reps img').first().waitFor();
    // Watching goes on in the background, says so, and its line goes when it is done.
    await expect.poll(() => countOf(page, '.watching'), { timeout: 120_000 }).toBe(0);
    await expect.poll(() => page.locator('.trace path').count()).toBe(1);
    await expect
      .poll(() => page.locator('.reps img').evaluateAll((stills) => stills.length))
      .toBeGreaterThan(1);
    const sources = await page
      .locator('.reps img')
      .evaluateAll((stills) => stills.map((one) => one.getAttribute('src') ?? ''));
    expect(sources.every((source) => source.startsWith('data:image/jpeg;base64,'))).toBe(true);
    const time = () => page.locator('.ctl .t').textContent();
    const begin = await time();
    await page.keyboard.press('ArrowDown');
    await expect.poll(time).not.toBe(begin);
    await page.keyboard.press('l');
    await page.locator('.ctl [aria-pressed=true]').first().waitFor();
    expect(complaints).toEqual([]);
  });

  test('measures and proposes by the performers that the teacher sees, and by the estimate again once undone', async () => {
    const { page, complaints } = await openReview('light');
    await page.getByRole('button', { name: /^teal, station A:/ }).click();
    const line = page.getByRole('group', { name: 'Performers in the picture' });
    const estimated = line.getByRole('button', { name: '2 performers, pencilled by the machine' });
    await estimated.waitFor();
    await page.keyboard.press('+');
    await line.getByRole('button', { name: '3 performers', pressed: true }).waitFor();
    await expect.poll(() => countOf(page, '.count .ln > div')).toBe(3);
    await page.getByText(/^Number 2 from the left is 0\.\d\ss behind/).waitFor();
    await page.getByRole('slider', { name: 'Place of performer 3' }).focus();
    await page.keyboard.press('ArrowRight');
    const told = () => page.getByRole('button', { name: /^Undo/ }).getAttribute('aria-label');
    await expect.poll(() => readLanes(page)).toHaveLength(3);
    expect(await told()).toMatch(/3 performers in/);
    await page.keyboard.press('Control+z');
    await page.keyboard.press('Control+z');
    await estimated.waitFor();
    await expect.poll(() => countOf(page, '.count .ln > div')).toBe(2);
    expect(complaints).toEqual([]);
  });

  test('keeps two windows on one lesson in step, decision and undo', async () => {
    const [one, other] = [await openReview('light'), await openReview('dark')];
    const left = ({ page }: typeof one) => page.locator('.way a[href="#review"]').textContent();
    expect([await left(one), await left(other)]).toEqual(['Review6 left', 'Review6 left']);
    await one.page.keyboard.press('y');
    await expect.poll(() => left(other)).toBe('Review5 left');
    await other.page.keyboard.press('Control+z');
    await expect.poll(() => left(one)).toBe('Review6 left');
    expect([...one.complaints, ...other.complaints]).toEqual([]);
  });

  test('covers a film that the window cannot decode, and plays a copy made for it', async () => {
    const { page } = await openReview('light');
    await page.route('**/film', (route) => route.fulfill({ contentType: 'video/mp4', body: 'no film' }));
    await page.getByRole('button', { name: /^amber, station C:/ }).click();
    await page.getByText('A copy that it can play is being made.').waitFor();
    await expect
      .poll(() =>
        page
          .locator('video')
          .evaluate((film) => film instanceof HTMLVideoElement && [film.currentSrc, film.readyState >= 2]),
      )
      .toEqual([expect.stringMatching(/\/proxy$/), true]);
    expect(await countOf(page, '.cover')).toBe(0);
  });

  test('compares squads from their first rep on, on one axis, by keys', async () => {
    const { page, complaints } = await openReview('light');
    await page.getByRole('button', { name: /^teal, station A:/ }).click();
    await page.locator('.performers').waitFor();
    await page.keyboard.press('c');
    await expect.poll(() => countOf(page, '.compare .nos li')).toBe(16);
    await page.keyboard.press(' ');
    const moments = () =>
      page
        .locator('.compare video')
        .evaluateAll((films) => films.map((film) => 'currentTime' in film && film.currentTime));
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowUp');
    const apart = STARTS_AT_SECONDS.amber - STARTS_AT_SECONDS.teal;
    await expect
      .poll(async () => {
        const [teal = 0, amber = 0] = (await moments()).map(Number);
        return Math.abs(amber - teal - apart) < 0.4;
      })
      .toBe(true);
    const tops = await page
      .locator('.compare .nos li:first-child')
      .evaluateAll((lines) => lines.map((line) => Math.round(line.getBoundingClientRect().top)));
    expect(tops[0]).toBe(tops[1]);
    expect(await countOf(page, '.compare .nos [aria-current=true]')).toBe(2);
    expect(complaints).toEqual([]);
  });

  test('names no squad while names are hidden, and takes back what was typed before any decision', async () => {
    const { page, complaints } = await openReview('light');
    const undo = page.getByRole('button', { name: /^Undo/ });
    await page.keyboard.press('y');
    await expect.poll(() => undo.getAttribute('aria-label')).toMatch(/IMG_\d+\.MP4 confirmed/);
    expect(await readAll(page)).toMatch(/teal|amber/i);
    await page.keyboard.press('h');
    await page.getByRole('button', { name: 'Hide names', pressed: true }).waitFor();
    expect(await readAll(page)).not.toMatch(/teal|amber|IMG_/i);
    await page.keyboard.press('h');
    await page.getByRole('button', { name: 'Hide names', pressed: false }).waitFor();
    // The shell's menu has undo's key, also while a field has the focus.
    const note = page.getByRole('textbox', { name: 'Note' });
    await page.keyboard.press('n');
    await page.keyboard.type('late');
    await expect.poll(() => note.inputValue()).toBe('late');
    desk.desk.tell({ kind: 'menu', command: 'undo' });
    await expect.poll(() => note.inputValue()).toBe('');
    expect(await undo.getAttribute('aria-label')).toMatch(/confirmed/);
    await page.getByRole('button', { name: 'Hide names' }).focus();
    desk.desk.tell({ kind: 'menu', command: 'undo' });
    await expect.poll(() => undo.getAttribute('aria-label')).not.toMatch(/confirmed/);
    expect(complaints).toEqual([]);
  });

  test('stays where it is whatever lesson is asked for, and shows the keys of two criteria', async () => {
    const { page, complaints } = await openReview('light');
    expect(await page.locator('.score header .cap').textContent()).toMatch(/^1–2 change · N note$/);
    const other = await mkdtemp(path.join(tmpdir(), 'routemark-other-'));
    await cp(path.join(desk.folder, 'plan.json'), path.join(other, 'plan.json'));
    await desk.desk.openFirst(desk.folder);
    const asked = await desk.desk.openFirst(other);
    const lesson = asked.ok ? asked.value : '';
    // What is told later comes later.
    desk.desk.tell({ kind: 'menu', command: 'keys' });
    await page.getByRole('dialog', { name: 'Keys' }).waitFor();
    expect(page.url()).toMatch(/\/review/);
    expect(page.url()).not.toContain(lesson);
    // A window at the start screen is free, and goes where the second start wants.
    await page.keyboard.press('Escape');
    await page.evaluate("location.hash = '#/'");
    await page.waitForFunction(() => document.querySelector('.way') === null);
    await desk.desk.openFirst(other);
    await page.waitForFunction((wanted) => location.hash.includes(wanted), lesson);
    await page.locator('.way').waitFor();
    expect(complaints).toEqual([]);
    // New windows open at the lesson that was asked for last.
    await desk.desk.openFirst(desk.folder);
    await rm(other, { recursive: true });
  });

  test('lets every hole of the class card be pressed in a low window', async () => {
    const { page, complaints } = await openReview('light', false);
    await page.setViewportSize({ width: 1280, height: 420 });
    const title = page.locator('.idrow h1');
    const before = await title.textContent();
    await page.locator('.punch:not(.now, .off, .gone)').last().click({ timeout: 30_000 });
    await expect.poll(() => title.textContent()).not.toBe(before);
    expect(complaints).toEqual([]);
  });

  test('adds up in Scores: a pupil is away, the rules stand side by side, a sum is explained, a scale is cut', async () => {
    const { page, complaints } = await openReview('light');
    const planned = async () => JSON.parse(await readFile(path.join(desk.folder, 'plan.json'), 'utf8'));
    await page.keyboard.press('Control+5');
    await page.getByRole('button', { name: 'teal, put its pupils away' }).waitFor();
    const pupil = page.locator('.pu').filter({ hasText: 'Ada' });
    await pupil.locator('.op').click();
    await page.keyboard.press('e');
    await page.getByRole('radio', { name: 'absent' }).check();
    await page.getByRole('button', { name: 'Decide' }).click();
    await pupil.getByText('absent: no mark').waitFor();
    await page.keyboard.press('Control+z');
    await pupil.getByText('absent: no mark').waitFor({ state: 'detached' });
    const rules = page.getByRole('radiogroup', { name: 'What breaking the order costs' });
    expect(await rules.getByRole('radio').count()).toBe(4);
    await rules.getByRole('radio', { name: /^Only reported/ }).click();
    await expect.poll(async () => (await planned()).orderRule).toBe('report');
    await page.getByRole('button', { name: 'teal, put its pupils away' }).focus();
    await page.keyboard.press('w');
    await page.locator('.sum-panel').getByText('Care: not given yet (of 2)').waitFor();
    await page.getByRole('button', { name: 'Cut points' }).click();
    await page.getByRole('button', { name: 'Mark', exact: true }).click();
    await page.getByLabel('Mark', { exact: true }).last().fill('4');
    await page.getByLabel('From per cent').last().fill('80');
    await page.getByRole('button', { name: 'Save the scale' }).click();
    await expect.poll(async () => (await planned()).scale).toContainEqual({ mark: '4', fromPercent: 80 });
    expect(complaints).toEqual([]);
  });

  test.each(['light', 'dark'] as const)('has no barrier in its states (%s)', async (theme) => {
    const { page } = await openReview(theme);
    await page.locator('.reps img').first().waitFor();
    expect(await findBarriers(page), 'one clip').toEqual([]);
    await page.keyboard.press('h');
    expect(await findBarriers(page), 'names hidden').toEqual([]);
    await page.keyboard.press('h');
    await page.keyboard.press('c');
    await page.locator('.compare video').nth(1).waitFor();
    expect(await findBarriers(page), 'compared').toEqual([]);
    await page.keyboard.press('c');
    for (let left = 6; left > 0; left -= 1) {
      const title = await page.locator('.idrow h1').textContent();
      await page.keyboard.press('y');
      const now = async () =>
        (await countOf(page, '.idrow h1')) > 0 ? page.locator('.idrow h1').textContent() : null;
      await expect.poll(now).not.toBe(title);
      if ((await now()) === null) break;
    }
    await page.locator('.blank').waitFor();
    expect(await findBarriers(page), 'all inked').toEqual([]);
    // For the next theme: as it was.
    for (let at = 0; at < 6; at += 1) await page.keyboard.press('Control+z');
    await page
      .locator('.way')
      .filter({ hasText: /6 left/ })
      .waitFor();
  });
});
