import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { findBarriers } from './axe.ts';
import { canBrowse, openTestDesk, type TestDesk, type WindowLook } from './browser.ts';
import { HURT, writeHostileLesson } from './hostile-lesson.ts';
import { findCutText, measureOverhang, walkByTab } from './look-at-page.ts';

const STEPS = ['plan', 'bring-in', 'line-up', 'review', 'scores', 'hand-in'] as const;

/** What can lie open on a screen, and the way to it. */
const OPEN: Readonly<Record<string, (page: Page) => Promise<void>>> = {
  'the list of keys': (page) => page.keyboard.press('?'),
  'bring-in: a tablet’s clock': (page) => page.locator('.tray .lip button').first().click(),
  'bring-in: choosing a folder': async (page) => {
    await page.keyboard.press('o');
    await page.locator('.folders li').first().waitFor();
  },
  'line-up: where a clip goes': (page) => openOnTicket(page, 'm'),
  'line-up: where it was filmed': (page) => openOnTicket(page, 's'),
  // Stays laid out so: the last of its screen.
  'line-up: by place': (page) => page.keyboard.press('p'),
  'scores: an adjustment': async (page) => {
    await page.locator('.pu .edit').first().click();
    await page.locator('.adjust').waitFor();
  },
  'scores: cut points': (page) => page.getByRole('button', { name: 'Cut points' }).click(),
  'hand-in: columns': (page) => page.getByRole('button', { name: 'Columns' }).click(),
};

async function openOnTicket(page: Page, key: string): Promise<void> {
  await page.locator('.tks button').first().click();
  await page.keyboard.press(key);
  await page.locator('.slip-dialog').waitFor();
}

async function show(page: Page, step: string): Promise<void> {
  const link = page.locator(`.way a[href="#${step}"]`);
  await link.click();
  await page.locator(`main.${step}`).waitFor();
  if (step === 'hand-in') await page.locator('.pv td').first().waitFor();
}

describe.runIf(canBrowse())('every screen, of a lesson whose texts were written to do harm', () => {
  let desk: TestDesk;
  let home = '';

  beforeAll(async () => {
    home = await mkdtemp(path.join(tmpdir(), 'routemark-screens-'));
    await writeHostileLesson(path.join(home, 'lesson'));
    // Every screen and all that opens on it: where React's complaints would come to light.
    desk = await openTestDesk({ lesson: path.join(home, 'lesson'), page: 'complaining' });
  });
  afterAll(async () => {
    await desk?.close();
    await rm(home, { recursive: true, force: true });
  });

  /** A window on the read lesson; what it complained of and whether a text ran is looked at when it is closed. */
  async function inWindow(look: WindowLook, run: (page: Page) => Promise<void>): Promise<void> {
    const { page, context, complaints } = await desk.openWindow(look);
    await page.locator('.tray').first().waitFor();
    await page.locator('.run').waitFor({ state: 'detached', timeout: 120_000 });
    await run(page);
    expect(await page.evaluate(HURT)).toBe(false);
    expect(complaints).toEqual([]);
    await context.close();
  }

  test.each(['light', 'dark'] as const)(
    'has no barrier, runs nothing and holds together, %s',
    async (theme) => {
      await inWindow({ theme }, async (page) => {
        for (const step of STEPS) {
          await show(page, step);
          expect(await findBarriers(page), step).toEqual([]);
          expect(await measureOverhang(page), step).toBeLessThanOrEqual(0);
          for (const [what, open] of Object.entries(OPEN)) {
            if (!what.startsWith(step) && !(step === 'plan' && !what.includes(':'))) continue;
            await open(page);
            expect(await findBarriers(page), what).toEqual([]);
            expect(await measureOverhang(page), what).toBeLessThanOrEqual(0);
            await page.keyboard.press('Escape');
          }
        }
      });
    },
  );

  test('is reached whole by Tab, shows where it is, and lets go again', async () => {
    await inWindow({}, async (page) => {
      for (const step of STEPS) {
        await show(page, step);
        expect(await walkByTab(page), step).toEqual({ unseen: [], missed: [], isFree: true });
      }
    });
  });

  test.each([
    ['light', 1280, 800, 100],
    ['light', 1920, 1080, 100],
    ['dark', 1280, 800, 200],
  ] as const)(
    'keeps all its text within the window, %s, %d × %d at %d per cent',
    async (theme, width, height, size) => {
      await inWindow({ theme, width, height }, async (page) => {
        for (const next of [125, 150, 200].filter((each) => each <= size)) {
          await page.getByRole('button', { name: 'Text size' }).click();
          await page.getByRole('button', { name: `Text size, now ${next} per cent` }).waitFor();
        }
        const expectWhole = async (what: string) => {
          expect(await measureOverhang(page), what).toBeLessThanOrEqual(0);
          expect(await findCutText(page), what).toEqual([]);
        };
        for (const step of STEPS) {
          await show(page, step);
          await expectWhole(step);
        }
        await page.keyboard.press('Control+o');
        await page.locator('main.start').waitFor();
        await expectWhole('start');
        expect(await findBarriers(page), 'start').toEqual([]);
        for (const slip of [/^Back up/, 'Restore from an archive…']) {
          await page.getByRole('button', { name: slip }).first().click();
          await page.locator('.slip-dialog').waitFor();
          await expectWhole(String(slip));
          expect(await findBarriers(page), String(slip)).toEqual([]);
          await page.keyboard.press('Escape');
        }
        await page.getByRole('button', { name: 'Look back on classes' }).click();
        await page.locator('.look-filter, .look-back .empty').first().waitFor();
        await expectWhole('look back');
      });
    },
  );

  test('stands still for who asked for less motion, and keeps names without colours', async () => {
    await inWindow({ reducedMotion: 'reduce' }, async (page) => {
      await page.emulateMedia({ forcedColors: 'active' });
      for (const step of STEPS) {
        await show(page, step);
        await page.keyboard.press('?');
        expect(await page.evaluate('document.getAnimations().length'), step).toBe(0);
        await page.keyboard.press('Escape');
        const squads = await page.locator('.squad').allTextContents();
        expect(
          squads.filter((name) => name.trim() === ''),
          step,
        ).toEqual([]);
        const here = await page
          .locator('.way a[aria-current]')
          .evaluate((link) => getComputedStyle(link).outlineStyle);
        expect(here, step).not.toBe('none');
      }
    });
  });

  test('obeys keys bound anew, refuses one that is taken, and lets single letters be switched off', async () => {
    await inWindow({}, async (page) => {
      await show(page, 'line-up');
      const list = page.getByRole('dialog', { name: 'Keys' });
      const bind = async (key: string) => {
        await page.keyboard.press('?');
        await list.getByRole('button', { name: /^choose its station/ }).click();
        await page.keyboard.press(key);
      };
      await bind('m');
      await list.getByText('M is taken: move it, then a slot’s number.').waitFor();
      await list.getByRole('button', { name: 'Close', exact: true }).click();
      await bind('g');
      await list.getByRole('button', { name: 'Close', exact: true }).click();
      await openOnTicket(page, 'g');
      await page.keyboard.press('Escape');
      await page.keyboard.press('?');
      await page.getByRole('checkbox', { name: 'Single-letter keys work' }).uncheck();
      await list.getByRole('button', { name: 'Close', exact: true }).click();
      await page.locator('.tks button').first().focus();
      await page.keyboard.press('g');
      expect(await page.locator('.slip-dialog').count()).toBe(0);
      await page.getByRole('button', { name: 'All keys' }).click();
      await list.getByRole('button', { name: 'Reset all keys' }).click();
    });
  });

  test('lists the keys on every screen, before a lesson is open and over the class clock too', async () => {
    await inWindow({}, async (page) => {
      const list = page.getByRole('dialog', { name: 'Keys' });
      const lookAtKeys = async () => {
        await page.keyboard.press('?');
        await list.waitFor();
        await page.keyboard.press('Escape');
        await list.waitFor({ state: 'detached' });
      };
      await show(page, 'plan');
      await page.getByRole('button', { name: 'Class clock' }).click();
      await page.locator('.class-clock').waitFor();
      await lookAtKeys();
      await page.keyboard.press('Escape');
      await page.locator('main.plan').waitFor();
      expect(await list.count()).toBe(0);
      await page.keyboard.press('Control+o');
      await page.locator('main.start').waitFor();
      await lookAtKeys();
      await page.getByRole('button', { name: 'Look back on classes' }).click();
      await page.locator('main.look-back').waitFor();
      await lookAtKeys();
      await page.keyboard.press('Control+o');
      await page.locator('main.start').waitFor();
    });
  });

  test('lists every key that a screen has', async () => {
    await inWindow({}, async (page) => {
      const inFoot = new Set<string>();
      for (const step of STEPS) {
        await show(page, step);
        for (const key of await page.locator('.foot .key').allTextContents()) inFoot.add(key);
      }
      await page.keyboard.press('?');
      const listed = await page.locator('.key-columns .key').allTextContents();
      expect([...inFoot].filter((key) => !listed.includes(key))).toEqual([]);
      expect(listed.length).toBeGreaterThan(40);
      expect(listed).toEqual(expect.arrayContaining(['Alt+↑', 'Alt+↓', 'Ctrl+O', 'Ctrl+6']));
    });
  });
});
