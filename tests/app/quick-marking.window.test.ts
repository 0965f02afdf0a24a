import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { canBrowse, openTestDesk, type TestDesk } from './browser.ts';

describe.skipIf(!canBrowse())('a teacher who marks faster than films load', () => {
  let desk: TestDesk;

  beforeAll(async () => {
    desk = await openTestDesk({ lesson: 'demo', isLookedAt: true });
  });

  afterAll(() => desk.close());

  test('has every decision on the disk, each clip once, however many films and stills were on their way', async () => {
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
    const clips = (await getView())?.clips.filter(({ criteria }) => criteria !== null) ?? [];
    for (const _ of clips) {
      const title = await head.textContent();
      await page.keyboard.press('y');
      await expect
        .poll(async () => ((await head.count()) > 0 ? head.textContent() : null), { interval: 5 })
        .not.toBe(title);
    }
    await page
      .locator('.foot')
      .filter({ hasText: /Saved \d/ })
      .waitFor();
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
