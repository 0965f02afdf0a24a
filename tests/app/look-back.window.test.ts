import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { generateYear } from '../bench/generated-year.ts';
import { findBarriers } from './axe.ts';
import { canBrowse, openTestDesk, type TestDesk } from './browser.ts';

const DAYS = 3;

describe.skipIf(!canBrowse())('looking back', () => {
  let home = '';
  let desk: TestDesk;

  beforeAll(async () => {
    home = await mkdtemp(path.join(tmpdir(), 'routemark-look-back-'));
    await generateYear(home, DAYS);
    desk = await openTestDesk({ lesson: path.join(home, '9 Kelp 1', '2025-09-01'), isInPlace: true });
  });
  afterAll(async () => {
    await desk?.close();
    await rm(home, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
  });

  test('shows the class of the lessons opened before, by keyboard alone, and says each plot in words', async () => {
    const { page, complaints, context } = await desk.openWindow();
    await page.getByRole('button', { name: /Other lessons/ }).press('Enter');
    await page.getByRole('button', { name: 'Look back on classes' }).press('Enter');
    const points = page.getByRole('img', { name: /^The class, Points: 3 lessons\. At first \d+ %/ });
    await points.waitFor();
    const criterion = page.getByRole('combobox', { name: 'Criterion' });
    await criterion.selectOption({ label: 'Together' });
    await page.getByRole('img', { name: /^Together, squad 5: 3 lessons/ }).waitFor();
    await page.getByText('Every lesson in numbers').press('Enter');
    const rows = page.getByRole('region', { name: 'Every lesson in numbers' }).getByRole('row');
    expect(await rows.count()).toBe(DAYS + 1);
    expect(await findBarriers(page)).toEqual([]);
    await page.emulateMedia({ colorScheme: 'dark' });
    expect(await findBarriers(page)).toEqual([]);
    expect(complaints).toEqual([]);
    await context.close();
  });

  test('writes the figures as CSV, over a file of before only when that is said', async () => {
    const { page, context } = await desk.openWindow();
    await page.evaluate("location.hash = '#/look-back'");
    const file = path.join(home, '9 Kelp 1', 'look back 9-Kelp-1.csv');
    await page.getByRole('button', { name: 'Write the figures as CSV' }).press('Enter');
    await page.getByText(`Written: ${file}`).waitFor();
    const text = await readFile(file, 'utf8');
    expect(text.trimEnd().split('\r\n')).toHaveLength(1 + DAYS * 5);
    await page.getByRole('button', { name: 'Write the figures as CSV' }).press('Enter');
    await page.getByRole('button', { name: 'Replace it' }).press('Enter');
    await page.getByRole('button', { name: 'Write the figures as CSV' }).waitFor();
    await context.close();
  });

  test('adding up that was stopped says what is missing, and goes on when asked to', async () => {
    const { page, context } = await desk.openWindow();
    const plan = path.join(home, '9 Kelp 1', '2025-09-01', 'plan.json');
    const before = await readFile(plan, 'utf8');
    await writeFile(plan, `${before}\n`);
    // Adding up takes as long as the teacher lets it.
    await context.route('**/call', async (route) => {
      if (!route.request().postData()?.includes('refreshLookBack')) await route.continue();
    });
    await page.evaluate("location.hash = '#/look-back'");
    await page.getByRole('button', { name: 'Stop' }).press('Enter');
    await page.getByText('1 lesson not added up yet').waitFor();
    await context.unroute('**/call');
    await page.getByRole('button', { name: 'Add up' }).press('Enter');
    await page.getByText('1 lesson not added up yet').waitFor({ state: 'detached' });
    await writeFile(plan, before);
    await context.close();
  });

  test('a lesson is kept in an archive and brought back from it, on the start screen', async () => {
    const { page, complaints, context } = await desk.openWindow();
    await page.getByRole('button', { name: /Other lessons/ }).press('Enter');
    await page.getByRole('button', { name: /^Back up/ }).press('Enter');
    expect(await findBarriers(page)).toEqual([]);
    await page.getByRole('button', { name: 'Back up this lesson' }).press('Enter');
    await page.getByText(/\d+ files, .* read back and compared/).waitFor();
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'Restore from an archive' }).press('Enter');
    const name = '2025-09-01 Harbour circuit 9 Kelp 1';
    await page.getByRole('button', { name: new RegExp(`with clips.*${name}\\.zip`) }).press('Enter');
    await page.getByRole('navigation', { name: 'The lesson, from plan to hand in' }).waitFor();
    const [brought, original] = [path.join(home, '9 Kelp 1', name), desk.folder];
    const read = (folder: string) => readFile(path.join(folder, 'marks.jsonl'), 'utf8');
    expect(await read(brought)).toBe(await read(original));
    expect(complaints).toEqual([]);
    await context.close();
  });
});
