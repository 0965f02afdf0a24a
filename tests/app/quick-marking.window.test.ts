import { readFile } from 'node:fs/promises';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { ClipView } from '../../src-core/contract/lesson-view.ts';
import { canBrowse, openTestDesk, type TestDesk } from './browser.ts';

describe.skipIf(!canBrowse())('a teacher who marks faster than films load', () => {
  let desk: TestDesk;

  beforeAll(async () => {
    desk = await openTestDesk({ lesson: 'demo', isLookedAt: true });
  });

  afterAll(() => desk.close());

  const openReview = async () => {
    const { page, complaints } = await desk.openWindow();
    await page.waitForFunction(() => /^#\/[0-9a-f]{16}\//.test(location.hash));
    const lesson = /#\/([0-9a-f]{16})/.exec(page.url())?.[1] ?? '';
    const getView = async () => (await desk.desk.lessons.find(lesson))?.getView();
    await expect.poll(async () => (await getView())?.reading.state, { timeout: 120_000 }).toBe('read');
    await page
      .locator('.way')
      .filter({ hasText: /\d+ left/ })
      .waitFor();
    await page.keyboard.press('Control+4');
    const head = page.locator('.idrow h1');
    await head.waitFor();
    return { page, complaints, head, getView };
  };
  const findSaved = (page: Page) => page.locator('.foot').filter({ hasText: /Saved \d/ });
  const isInked = ({ criteria }: { readonly criteria: ClipView['criteria'] }) =>
    criteria?.every(({ confirmed }) => confirmed) ?? false;

  test('comes where two keys at once lead, no box has the focus there, and a reload stays', async () => {
    const { page, complaints, head, getView } = await openReview();
    await page.locator('.yn input').first().focus();
    await Promise.all([page.keyboard.press('y'), page.keyboard.press('y')]);
    await findSaved(page).waitFor();
    await expect.poll(async () => (await getView())?.clips.filter(isInked).length).toBe(2);
    expect(await page.evaluate(() => document.activeElement === document.body)).toBe(true);
    const title = await head.textContent();
    await page.reload();
    await head.waitFor();
    await expect.poll(() => head.textContent()).toBe(title);
    expect(complaints).toEqual([]);
    await page.context().close();
  });

  test('has every decision on the disk, each clip once, however many films and stills were on their way', async () => {
    const { page, complaints, head, getView } = await openReview();
    const clips = (await getView())?.clips.filter(({ criteria }) => criteria !== null) ?? [];
    for (const _ of clips.filter((clip) => !isInked(clip))) {
      const title = await head.textContent();
      await page.keyboard.press('y');
      await expect
        .poll(async () => ((await head.count()) > 0 ? head.textContent() : null), { interval: 5 })
        .not.toBe(title);
    }
    await findSaved(page).waitFor();
    const journal = await readFile(path.join(desk.folder, 'marks.jsonl'), 'utf8');
    const confirmed = journal
      .trim()
      .split('\n')
      .slice(1)
      .map((line) => (JSON.parse(line) as { what: { clip: string } }).what.clip);
    expect(confirmed.toSorted()).toEqual(clips.map(({ id }) => id).toSorted());
    expect(complaints).toEqual([]);
  });
});
