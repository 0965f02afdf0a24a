// A whole visit to a desk, for a test that watches what it asks of the network: opens the lesson given in a Chromium,
// lets its clips be read, shows every screen and plays a clip. Prints what the window complained of, as JSON.

import { openTestDesk } from './browser.ts';

const STEPS = ['plan', 'bring-in', 'line-up', 'scores', 'hand-in', 'review'];

const [folder = ''] = process.argv.slice(2);
const desk = await openTestDesk({ lesson: folder });
const { page, complaints } = await desk.openWindow();
await page.locator('.tray').first().waitFor();
await page.locator('.run').waitFor({ state: 'detached', timeout: 120_000 });
for (const step of STEPS) {
  await page.locator(`.way a[href="#${step}"]`).click();
  await page.locator(`main.${step}`).waitFor();
}
await page.locator('video').first().waitFor();
await page.waitForFunction(() =>
  [...document.querySelectorAll('video')].some((film) => film.readyState >= 2),
);
await page.locator('.way a[href="#hand-in"]').click();
for (const name of ['Second marking', 'Look after']) {
  await page.getByRole('button', { name, exact: true }).click();
  await page.getByRole('heading', { level: 2 }).first().waitFor();
}
await page.goto(`${new URL(page.url()).origin}/#/look-back`);
await page.locator('main.look-back').waitFor();
await page.evaluate(() => document.fonts.ready);
await desk.close();
process.stdout.write(`${JSON.stringify(complaints)}\n`);
