import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { listOpenFlags } from '../../renderer/client/flag-step.ts';
import { findBarriers } from './axe.ts';
import { canBrowse, openTestDesk, type TestDesk, type TestWindow, type WindowLook } from './browser.ts';

describe.runIf(canBrowse())('Line up, with the demo’s clips', () => {
  let desk: TestDesk;

  beforeAll(async () => {
    desk = await openTestDesk({ lesson: 'demo', isLookedAt: true });
  });
  afterAll(() => desk?.close());

  const openLineUp = async (look?: WindowLook): Promise<TestWindow> => {
    const window = await desk.openWindow(look);
    const { page } = window;
    await page.locator('.tray').first().waitFor();
    await page.locator('.run').waitFor({ state: 'detached' });
    await page.keyboard.press('Control+3');
    await page.locator('.tk').first().waitFor();
    return window;
  };
  const ticket = (page: Page, name: string | RegExp) => page.locator('.tk').getByRole('button', { name });

  test.each(['light', 'dark'] as const)('stands no one in the way, %s', async (theme) => {
    const { page, complaints, context } = await openLineUp({ theme });
    expect(await findBarriers(page)).toEqual([]);
    for (const [key, what] of [
      ['s', 'dialog'],
      ['m', 'dialog'],
      ['t', 'dialog'],
    ] as const) {
      await page.keyboard.press(key);
      await page.getByRole(what).waitFor();
      expect(await findBarriers(page)).toEqual([]);
      await page.keyboard.press('Escape');
      await page.getByRole(what).waitFor({ state: 'detached' });
    }
    await page.keyboard.press('p');
    await page.locator('.ptk').first().waitFor();
    expect(await findBarriers(page)).toEqual([]);
    expect(complaints).toEqual([]);
    await context.close();
  });

  test('names tickets, slots and what is missing', async () => {
    const { page, context } = await openLineUp();
    expect(await ticket(page, 'Plum, F 10:58, out of order').count()).toBe(1);
    expect(await ticket(page, 'Plum, C 10:47, in order').count()).toBe(1);
    const amber = page.getByRole('region', { name: 'Amber, 5 of 6 slots have a clip' });
    expect(await amber.getByText('slot 5, F, no clip').count()).toBe(1);
    await context.close();
  });

  test('is walked by arrows, one ticket in the order of Tab', async () => {
    const { page, context } = await openLineUp();
    expect(await page.locator('.tk button[tabindex="0"]').count()).toBe(1);
    await ticket(page, 'Teal, A 10:47, in order').click();
    await page.keyboard.press('ArrowDown');
    expect(await page.evaluate('document.activeElement.ariaLabel')).toBe('Teal, B 10:52, in order');
    await page.keyboard.press('ArrowRight');
    expect(await page.evaluate('document.activeElement.ariaLabel')).toBe('Amber, C 10:52, in order');
    await page.getByText('The card was read in the clip.').waitFor();
    await context.close();
  });

  test('goes on to the next flag with the focus, so that keys act on what has it', async () => {
    const { page, context } = await openLineUp();
    await ticket(page, 'Teal, A 10:47, in order').click();
    const focused = () =>
      page.evaluate<string>('document.activeElement.ariaLabel ?? document.activeElement.innerText');
    const seen = new Set<string>();
    for (let at = 0; at < 5; at += 1) {
      await page.keyboard.press('f');
      const current = page.locator('.tk button[aria-current="true"]');
      const chosen = (await current.count()) > 0 ? await current.getAttribute('aria-label') : null;
      if (chosen === null)
        expect(await page.locator('.slip.sel .t').evaluate((slip) => slip === document.activeElement)).toBe(
          true,
        );
      else expect(await focused()).toBe(chosen);
      seen.add(await focused());
    }
    expect(seen.size).toBeGreaterThan(2);
    await context.close();
  });

  test('moves a clip by M and a slot’s number, and takes it back', async () => {
    const { page, context } = await openLineUp();
    await ticket(page, 'Amber, A 11:12, in order').click();
    await page.keyboard.press('m');
    await page.getByRole('dialog').waitFor();
    await page.keyboard.press('5');
    await page.getByRole('region', { name: 'Amber, 5 of 6 slots have a clip' }).waitFor();
    await page.getByText('slot 6, A, no clip').waitFor({ state: 'attached' });
    await page.keyboard.press('Control+z');
    await page.getByText('slot 5, F, no clip').waitFor({ state: 'attached' });
    await context.close();
  });

  test('moves a clip by hand, to the slot that it is let go at', async () => {
    const { page, context } = await openLineUp();
    const held = await ticket(page, 'Amber, A 11:12, in order').boundingBox();
    const slot = await page.locator('.card[data-squad=amber] [data-slot="4"]').boundingBox();
    if (!held || !slot) throw new Error('nothing to drag');
    await page.mouse.move(held.x + 20, held.y + 10);
    await page.mouse.down();
    await page.mouse.move(held.x + 20, held.y - 30, { steps: 4 });
    await page.mouse.move(held.x + 20, slot.y + slot.height / 2, { steps: 4 });
    expect(await page.locator('.slot.aim').count()).toBe(1);
    await page.mouse.up();
    await page.getByText('slot 6, A, no clip').waitFor({ state: 'attached' });
    expect(await page.locator('.tk.held').count()).toBe(0);
    await page.keyboard.press('Control+z');
    await page.getByText('slot 5, F, no clip').waitFor({ state: 'attached' });
    await context.close();
  });

  test('names a station by comparing with clips whose place is sure', async () => {
    const { page, context } = await openLineUp();
    await ticket(page, /Teal, D 11:02/)
      .first()
      .click();
    await page.keyboard.press('s');
    const dialog = page.getByRole('dialog', { name: 'Where was Teal’s clip of 11:02 filmed?' });
    await dialog.getByRole('button', { name: /Crane Square/ }).click();
    await page.getByText('You named the station.').waitFor();
    await page.keyboard.press('Control+z');
    await page.getByText('Inferred from the walk; no card was read.').waitFor();
    await context.close();
  });

  test('every flag is settled by one key, and one of them is opened again', async () => {
    const { page, complaints, context } = await openLineUp();
    const left = page.getByRole('region', { name: 'Flags' }).getByRole('heading', { level: 2 });
    expect(await left.textContent()).toBe('5 flags');
    for (const head of ['4 flags', '3 flags', '2 flags', '1 flag', 'No open flag']) {
      await page.keyboard.press('k');
      await left.getByText(head, { exact: true }).waitFor();
    }
    // What the page has not handed on yet goes with its window; the host's own flags are what the next one finds.
    const [, lesson = ''] = /#\/([0-9a-f]{16})/.exec(page.url()) ?? [];
    const listOpen = async () => {
      const view = (await desk.desk.lessons.find(lesson))?.getView();
      return view && listOpenFlags(view, 'line-up');
    };
    await expect.poll(listOpen).toHaveLength(0);
    await page.getByRole('button', { name: 'Open again' }).first().click();
    await left.getByText('1 flag', { exact: true }).waitFor();
    await expect.poll(listOpen).toHaveLength(1);
    expect(complaints).toEqual([]);
    await context.close();
  });

  test('zooms about what is in view, and pans by its ground', async () => {
    const { page, context } = await openLineUp();
    await page.getByRole('button', { name: '15 min' }).click();
    const scroll = () => page.evaluate<number>('document.querySelector(".loom").scrollTop');
    await expect.poll(scroll).toBeGreaterThan(0);
    const before = await scroll();
    const box = await page.locator('.loom').boundingBox();
    if (!box) throw new Error('no loom');
    await page.mouse.move(box.x + 300, box.y + 300);
    await page.mouse.down();
    await page.mouse.move(box.x + 300, box.y + 400, { steps: 4 });
    await page.mouse.up();
    await expect.poll(scroll).toBe(before - 100);
    await page.keyboard.press('-');
    await page.keyboard.press('-');
    await page.getByRole('button', { name: 'Whole period' }).click();
    await expect.poll(scroll).toBe(0);
    await context.close();
  });

  test('single letters rest in a text field, and when they are switched off', async () => {
    const { page, context } = await openLineUp();
    const reason = page.getByLabel('Reason, if any');
    // Until the first flag has come from the host, there is none to go to.
    await expect
      .poll(async () => {
        await page.keyboard.press('f');
        return reason.count();
      })
      .toBeGreaterThan(0);
    await reason.first().fill('');
    await reason.first().press('p');
    expect(await page.locator('.ptk').count()).toBe(0);
    await page.locator('h1').click();
    await page.keyboard.press('?');
    await page.getByLabel('Single-letter keys work').uncheck();
    await page.keyboard.press('Escape');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await page.keyboard.press('p');
    expect(await page.locator('.ptk').count()).toBe(0);
    await context.close();
  });
});
