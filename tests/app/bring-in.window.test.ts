import { mkdir, readdir, rename, rm } from 'node:fs/promises';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { buildDemoLesson } from '../../fixtures/build-demo-lesson.ts';
import { findBarriers } from './axe.ts';
import { canBrowse, openTestDesk, type TestDesk } from './browser.ts';

const canRun = canBrowse();

/** Until the trays stand and nothing is being read any more. */
async function waitForTrays(page: Page): Promise<void> {
  await page.locator('.tray').first().waitFor();
  await page.locator('.run').waitFor({ state: 'detached' });
}

const countWay = (page: Page) => page.locator('.way a[aria-current] span').textContent();

describe.runIf(canRun)('Bring in, with the demo’s clips', () => {
  let desk: TestDesk;

  beforeAll(async () => {
    desk = await openTestDesk({ lesson: 'demo', isLookedAt: true });
  });
  afterAll(() => desk?.close());

  test.each(['light', 'dark'] as const)('stands no one in the way, %s', async (theme) => {
    const { page, complaints, context } = await desk.openWindow({ theme });
    await waitForTrays(page);
    expect(await findBarriers(page)).toEqual([]);
    expect(complaints).toEqual([]);
    await context.close();
  });

  test('names every tray and slip', async () => {
    const { page, context } = await desk.openWindow();
    await waitForTrays(page);
    const amber = page.getByRole('listitem', { name: 'Amber, 5 of 6 slots have a clip' });
    expect(await amber.getByText('slot 5, no clip').count()).toBe(1);
    expect(await amber.getByText('slot 1, station B, pencilled by the machine').count()).toBe(1);
    await context.close();
  });

  test('leads to the field and to the question that its buttons name', async () => {
    const { page, context } = await desk.openWindow();
    await waitForTrays(page);
    const focused = () =>
      page.evaluate<string>('document.activeElement.ariaLabel ?? document.activeElement.textContent');
    await page.getByRole('button', { name: 'Limits of the period…' }).click();
    await expect.poll(focused).toMatch(/^Minutes around a period/);
    await page.keyboard.press('Control+2');
    await page.getByRole('button', { name: 'Choose its slot…' }).first().click();
    await page.getByRole('dialog', { name: /^Where does .* go\?$/ }).waitFor();
    await page.keyboard.press('Escape');
    await expect.poll(focused).toMatch(/^Plum, A no time/);
    await context.close();
  });

  test('goes from problem to problem by one key, and each is settled by one press', async () => {
    const { page, complaints, context } = await desk.openWindow();
    await waitForTrays(page);
    expect(await countWay(page)).toBe('6 to place');
    for (let left = 6; left > 0; left -= 1) {
      await page.keyboard.press('f');
      await page.keyboard.press('Enter');
      await page
        .locator('.probs li[data-key]')
        .nth(left - 1)
        .waitFor({ state: 'detached' });
    }
    expect(await countWay(page)).toBe('all placed');
    await page.keyboard.press('Control+z');
    await page.locator('.probs li[data-key]').waitFor();
    await page.keyboard.press('Control+Shift+Z');
    await page.getByRole('heading', { name: 'Nothing waits' }).waitFor();
    expect(complaints).toEqual([]);
    await context.close();
  });

  test('sets a tablet’s clock by hand, and back', async () => {
    const { page, context } = await desk.openWindow();
    await waitForTrays(page);
    const tray = page.locator('.tray[data-squad=teal]');
    await tray.locator('.lip button').click();
    await page.getByLabel('Add to what the tablet shows').fill('+1:30');
    await page.keyboard.press('Enter');
    await tray.getByText('clock 2 min slow, by you').waitFor();
    await page.keyboard.press('Control+z');
    await tray.getByText('clock 3.7 s fast').waitFor();
    await context.close();
  });

  test('says what happened when the disk is too full, and reads in place instead', async () => {
    const { page, context } = await desk.openWindow();
    await waitForTrays(page);
    await page.route('**/call', async (route) => {
      if (!route.request().postData()?.includes('"bringClips"')) return route.fallback();
      const problem = { code: 'disk-too-small', neededBytes: 3.1e9, freeBytes: 2.7e9 };
      await route.fulfill({ json: { ok: false, problems: [problem] } });
    });
    await page.keyboard.press('o');
    await page.locator('.folders button').first().click();
    await page.getByRole('button', { name: 'Choose this folder' }).click();
    const note = page.getByRole('alert', { name: 'Copying stopped' });
    await note.getByText('3.1 GB').waitFor();
    expect(await note.getByRole('button').first().textContent()).toBe('Go on, reading in place');
    expect(await findBarriers(page)).toEqual([]);
    await context.close();
  });
});

describe.runIf(canRun)('Bring in, with nothing there yet', () => {
  let desk: TestDesk;
  let tablet = '';

  beforeAll(async () => {
    desk = await openTestDesk({ lesson: 'demo', withoutClips: true });
    const home = path.dirname(desk.folder);
    await buildDemoLesson(path.join(home, 'filmed'));
    // Beside the lesson, where the window finds it without being told.
    tablet = path.join(home, 'plugged in', 'Tablet 1');
    await mkdir(path.dirname(tablet));
    await rename(path.join(home, 'filmed', 'clips', 'Teal squad'), tablet);
    await rm(path.join(home, 'filmed'), { recursive: true });
  });
  afterAll(() => desk?.close());

  test('says what belongs here, with trays and slots drawn already', async () => {
    const { page, context } = await desk.openWindow();
    await page.getByRole('heading', { name: 'Drop the squads’ folders here' }).waitFor();
    expect(await page.locator('.tray .gap').count()).toBe(24);
    expect(await page.locator('.need').count()).toBe(0);
    expect(await findBarriers(page)).toEqual([]);
    await context.close();
  });

  test('a folder chosen by keyboard alone is copied, checked and read', async () => {
    const { page, context, complaints } = await desk.openWindow();
    await page.getByRole('heading', { name: 'Drop the squads’ folders here' }).waitFor();
    await page.keyboard.press('o');
    await page.locator('.folders button').first().waitFor();
    for (const name of [path.basename(path.dirname(desk.folder)), 'plugged in', 'Tablet 1']) {
      const folder = page.locator('.folders button', { hasText: name });
      await folder.focus();
      await page.keyboard.press('Enter');
    }
    await page.locator('.folder-here', { hasText: tablet }).waitFor();
    await page.getByRole('button', { name: 'Choose this folder' }).focus();
    await page.keyboard.press('Enter');
    await page.getByText(/copied and checked\.$/).waitFor();
    await waitForTrays(page);
    expect(await page.getByRole('listitem', { name: 'Teal, 6 of 6 slots have a clip' }).count()).toBe(1);
    const copied = await readdir(path.join(desk.folder, 'clips'), { recursive: true });
    expect(copied.map((file) => path.basename(file))).toContain('IMG_0412.MOV');
    expect(complaints).toEqual([]);
    await context.close();
  });
});

describe.runIf(canRun)('the first start', () => {
  let desk: TestDesk;

  beforeAll(async () => {
    desk = await openTestDesk({ lesson: 'none' });
  });
  afterAll(() => desk?.close());

  test('has the demo lesson one press away, and a short tour that stays away once read', async () => {
    const { page, context, complaints } = await desk.openWindow();
    await page.getByRole('heading', { name: 'How it goes' }).waitFor();
    expect(await findBarriers(page)).toEqual([]);
    await page.getByRole('button', { name: 'Got it' }).click();
    await page.reload();
    const demo = page.getByRole('button', { name: 'Open the demo lesson' });
    await demo.waitFor();
    expect(await page.getByRole('heading', { name: 'How it goes' }).count()).toBe(0);
    const focused = () => page.evaluate<string>('document.activeElement.textContent');
    await expect.poll(focused).toBe('Open the demo lesson');
    await demo.click();
    await waitForTrays(page);
    expect(await page.locator('.tray').count()).toBe(4);
    // Whoever comes back goes on with the lesson of last time.
    await page.locator('.mast-id').click();
    await expect.poll(focused).toMatch(/^Harbour circuit/);
    expect(await page.locator('.start-sheets h2').first().textContent()).toBe('Opened before');
    expect(complaints).toEqual([]);
    await context.close();
  });
});
