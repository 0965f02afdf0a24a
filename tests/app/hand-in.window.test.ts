import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { strToU8, zipSync } from 'fflate';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { writeSmallLesson } from '../contract/small-lesson.ts';
import { buildSchoolSet, toBundle } from '../unit/gradebook/oneroster/school.ts';
import { findBarriers } from './axe.ts';
import { canBrowse, openTestDesk, type TestDesk, type WindowLook } from './browser.ts';
import { findCutText, measureOverhang, walkByTab } from './look-at-page.ts';

/** A school's set that the small lesson's two pupils are in, as the school would give it out. */
function zipSchoolSet(): Buffer {
  const texts = toBundle(buildSchoolSet('1.2')).files.map(({ path: file, text }) => [
    file,
    strToU8(text.replaceAll('k-0412', 'k-1').replaceAll('k-0414', 'k-2')),
  ]);
  return Buffer.from(zipSync(Object.fromEntries(texts)));
}

describe.runIf(canBrowse())('Hand in, beyond the CSV', () => {
  let desk: TestDesk;
  let home = '';

  beforeAll(async () => {
    home = await mkdtemp(path.join(tmpdir(), 'routemark-hand-in-'));
    await writeSmallLesson(path.join(home, 'lesson'));
    desk = await openTestDesk({ lesson: path.join(home, 'lesson') });
  });
  afterAll(async () => {
    await desk?.close();
    await rm(home, { recursive: true, force: true });
  });

  async function inWindow(look: WindowLook, run: (page: Page) => Promise<void>): Promise<void> {
    const { page, context, complaints } = await desk.openWindow(look);
    await page.locator('.way a[href="#hand-in"]').click();
    await page.getByRole('button', { name: 'Look after' }).waitFor();
    await run(page);
    expect(complaints).toEqual([]);
    await context.close();
  }

  async function expectSound(page: Page, what: string): Promise<void> {
    expect(await findBarriers(page), what).toEqual([]);
    expect(await measureOverhang(page), what).toBeLessThanOrEqual(0);
    expect(await findCutText(page), what).toEqual([]);
  }

  test('kinds are chosen by key, previewed to the letter, written, and as they were left the next time', async () => {
    await inWindow({}, async (page) => {
      const written = page.getByText(/^(Written|Printed): /);
      await page.getByRole('radio', { name: /Gradebook CSV/ }).focus();
      await page.keyboard.press('ArrowDown');
      await page.getByRole('button', { name: 'Where points came from' }).click();
      await page.getByRole('cell', { name: 'A Post A' }).first().waitFor();
      await expectSound(page, 'a workbook');
      await page.getByRole('radio', { name: /Spreadsheet/ }).focus();
      await page.keyboard.press('ArrowDown');
      await page.getByRole('heading', { name: 'Built on your school’s set' }).waitFor();
      expect(await page.locator('.write').isDisabled()).toBe(true);
      const zip = { name: 'school.zip', mimeType: 'application/zip', buffer: zipSchoolSet() };
      await page.locator('.school input[type=file]').setInputFiles(zip);
      await page.getByText('All 37 rules of OneRoster 1.2 are kept').click();
      await page.getByText('Every score lies within its range').waitFor();
      await expectSound(page, 'a OneRoster set');
      await page.getByRole('button', { name: /^Write .*\.zip/ }).click();
      await written.waitFor();
      await page.getByRole('radio', { name: /Slips for pupils/ }).check();
      await page.getByText('Your teacher is still looking at some of your films.').first().waitFor();
      await expectSound(page, 'slips');
      await page.getByRole('button', { name: /^Write .*slips\.pdf/ }).click();
      await page.getByText(/^Printed: .*1 page$/).waitFor();
    });
    const files = await readdir(path.join(desk.folder, 'hand-in'));
    expect(files.map((name) => path.extname(name)).sort()).toEqual(['.pdf', '.zip']);
    await inWindow({ theme: 'dark' }, async (page) => {
      // The choice is the window's own, and a new context is another machine; marks handed in are the lesson's.
      await page.getByText(/^Handed in once/).waitFor();
      await page.getByRole('radio', { name: /Grade sheet/ }).check();
      await expectSound(page, 'a grade sheet, dark');
      await page.reload();
      await page.locator('.kinds').waitFor();
      expect(await page.getByRole('radio', { name: /Grade sheet/ }).isChecked()).toBe(true);
    });
  });

  test('the same clips are marked again, blind, by key, and the two are compared', async () => {
    await inWindow({}, async (page) => {
      const left = (amount: number) =>
        page.locator('.way a[href="#review"]').filter({ hasText: `${amount} left` });
      const markTwo = async (keys: readonly string[]) => {
        await page.locator('.score').first().waitFor();
        for (const [at, key] of keys.entries()) {
          await page.keyboard.press(key);
          await left(5 - at).waitFor();
        }
      };
      await page.locator('.way a[href="#review"]').click();
      await markTwo(['y', 'y']);
      await page.locator('.way a[href="#hand-in"]').click();
      await page.getByRole('button', { name: 'Second marking' }).click();
      await page.getByText('Nobody has marked this lesson a second time yet.').waitFor();
      await page.getByLabel('Who marks').fill('R. Skerry');
      await page.keyboard.press('Enter');
      await page.getByText('Second marking by R. Skerry. The first marks are hidden.').waitFor();
      await left(6).waitFor();
      await expectSound(page, 'a second marking');
      // The host is slow to record, and the way back is taken at once.
      await page.route('**/call', async (route) => {
        if (route.request().postDataJSON()?.name === 'decide') await pause(700);
        await route.continue();
      });
      await markTwo(['y', 'x']);
      await page.getByRole('button', { name: 'Back to the lesson' }).click();
      await page.getByText('The same for 1 of 2 clips.').first().waitFor();
      await expectSound(page, 'the agreement');
      await page.getByRole('button', { name: /^Watch / }).click();
      await page.locator('main.review').waitFor();
      expect(await page.locator('.second-strip').count()).toBe(0);
    });
    expect(await readdir(path.join(desk.folder, 'second-marks'))).toEqual(['r-skerry.jsonl']);
  });

  test('looks after: a last day, consent, one pupil’s record, and films that go once they were looked at', async () => {
    await inWindow({ theme: 'dark' }, async (page) => {
      await page.getByRole('button', { name: 'Look after' }).click();
      await page.getByLabel('Last day').fill('2999-06-30');
      await page.getByRole('button', { name: 'Set this day' }).click();
      await page.getByText(/kept until .*2999/).waitFor();
      await page.getByLabel('Consent of Ada Marsh').selectOption('withheld');
      await page.getByText('1 shown in no still').waitFor();
      expect(await page.getByLabel('Stills of Ada Marsh').isDisabled()).toBe(true);
      await page.getByRole('button', { name: 'Record of Bo Reed' }).click();
      await page.getByText('# What is held on Bo Reed').waitFor();
      await page.getByRole('button', { name: 'Write the record' }).click();
      await page.getByText(/Written: .*record k-2\.md/).waitFor();
      await page.getByRole('button', { name: 'Show what would go' }).click();
      await page.getByText(/would be deleted. Nothing is deleted yet/).waitFor();
      await expectSound(page, 'look after, dark');
      expect(await walkByTab(page)).toEqual({ unseen: [], missed: [], isFree: true });
      expect(await page.getByRole('button', { name: /^Delete \d+ files/ }).isDisabled()).toBe(true);
      await page.getByRole('checkbox', { name: /I have looked at this list/ }).check();
      await page.getByRole('button', { name: /^Delete \d+ files/ }).click();
      await page.getByText(/teacher: clips and stills, \d+ files/).waitFor();
    });
    expect(await readFile(path.join(desk.folder, 'records', 'record k-2.md'), 'utf8')).not.toMatch(
      /Marsh|k-1/,
    );
    expect(await readdir(desk.folder)).not.toContain('clips');
  });

  test('where everything goes, the window leaves the lesson and forgets it', async () => {
    await inWindow({}, async (page) => {
      await page.getByRole('button', { name: 'Look after' }).click();
      await page.getByRole('radio', { name: /Everything/ }).check();
      await page.getByRole('button', { name: 'Show what would go' }).click();
      await page.getByRole('checkbox', { name: /I have looked at this list/ }).check();
      await page.getByRole('button', { name: /^Delete \d+ files/ }).click();
      await page
        .getByRole('heading', { name: 'Open the demo lesson' })
        .or(page.locator('.start'))
        .first()
        .waitFor();
      const kept = await page.evaluate(`new Promise((resolve) => {
        const opening = indexedDB.open('routemark');
        opening.onsuccess = () => {
          const all = opening.result.transaction('lessons').objectStore('lessons').getAllKeys();
          all.onsuccess = () => resolve(all.result);
        };
      })`);
      expect(kept).toEqual([]);
    });
    expect(await readdir(desk.folder)).toEqual(['deletions.jsonl']);
  });
});
