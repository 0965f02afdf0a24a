import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { checkPlan } from '../../src-core/lesson/check-plan.ts';
import { checkReadiness } from '../../src-core/lesson/check-readiness.ts';
import { BUILT_IN_EXERCISES } from '../../src-core/lesson/library/built-in.ts';
import type { Plan } from '../../src-core/lesson/plan.ts';
import { parsePlan } from '../../src-core/lesson-file/plan-file.ts';
import { findBarriers } from './axe.ts';
import { canBrowse, openTestDesk, type TestDesk } from './browser.ts';
import { openCountingHand } from './count-acts.ts';
import { PUPILS, STATIONS } from './quay-class.ts';

/** The most keys, clicks and texts that a whole lesson may cost who knows the way. */
const MOST_ACTS = 100;

const at = (page: Page, place: string) => page.locator(`[data-at="${place}"]`);
const getFocus = (page: Page) =>
  page.evaluate(() => document.activeElement?.getAttribute('data-at') ?? document.activeElement?.tagName);

async function openPlan(desk: TestDesk, look = {}) {
  const window = await desk.openWindow(look);
  await window.page.getByRole('button', { name: /^Quay circuit/ }).click();
  await window.page.locator('.way').waitFor();
  await window.page.keyboard.press('Control+1');
  await window.page.locator('.stt').waitFor();
  await window.page.locator('.chk li').first().waitFor();
  return window;
}

describe.runIf(canBrowse())('Plan', () => {
  let desk: TestDesk;
  let home = '';
  const formerHome = process.env.HOME;

  const readPlan = async (): Promise<Plan> => {
    const folder = (await readdir(home)).find((name) => name.endsWith('Quay circuit')) ?? '';
    const plan = parsePlan(await readFile(path.join(home, folder, 'plan.json'), 'utf8'));
    if (!plan.ok) throw new Error('the saved plan opens');
    return plan.value;
  };
  const readPupils = async (): Promise<string> => {
    const folder = (await readdir(home)).find((name) => name.endsWith('Quay circuit')) ?? '';
    return readFile(path.join(home, folder, 'roster.csv'), 'utf8');
  };

  beforeAll(async () => {
    desk = await openTestDesk({ lesson: 'none' });
    // A lesson from nothing goes home where no other lies yet.
    home = await mkdtemp(path.join(tmpdir(), 'routemark-teacher-'));
    process.env.HOME = home;
  });
  afterAll(async () => {
    process.env.HOME = formerHome;
    await desk?.close();
    await rm(home, { recursive: true, force: true });
  });

  test('a whole lesson is planned from nothing, and what is saved is sound and opens again', async () => {
    const { page, context, complaints } = await desk.openWindow();
    const hand = openCountingHand(page);
    const list = path.join(home, 'class.csv');
    await writeFile(
      list,
      ['Student No.,First Name,Last Name', ...PUPILS.map((row) => row.join(','))].join('\n'),
    );

    hand.begin('new lesson');
    await hand.click(page.getByLabel('Title'));
    await hand.type('Quay circuit');
    await hand.press('Tab');
    await hand.type('8 Dulse');
    await hand.press('Tab');
    await hand.type('Cobble Quay School');
    await hand.press('Enter');
    await page.locator('.stt').waitFor();

    hand.begin('class and squads');
    await hand.click(page.getByRole('button', { name: 'Class list…' }));
    await hand.choose(page.locator('.roster-from input[type=file]'), list);
    // A head that is not known is put right by hand.
    await hand.click(page.getByRole('button', { name: 'Roster id: which column. Add it' }));
    await hand.click(page.getByRole('menuitemradio', { name: 'Student No.' }));
    await page.getByText('24 pupils new in the class').waitFor();
    await hand.click(page.getByRole('button', { name: 'Take over 24 pupils' }));
    await page.locator('[data-pupil]').first().waitFor();
    await hand.click(page.getByRole('button', { name: 'Form squads' }));
    await hand.click(page.getByRole('button', { name: 'Ink these squads' }));

    hand.begin('stations');
    for (const [row, { place, clue, exercise, reps }] of STATIONS.entries()) {
      if (row >= 4) await hand.click(page.getByRole('button', { name: 'Station', exact: true }));
      else if (row === 0) await hand.click(at(page, 'stations[0].place'));
      await expect.poll(() => getFocus(page)).toMatch(row === 0 ? /INPUT/ : `stations[${row}].place`);
      await hand.type(place);
      await hand.press('Tab');
      await hand.type(clue);
      await hand.press('Tab');
      await hand.type(exercise);
      await page.getByRole('option').first().waitFor();
      await hand.press('ArrowDown');
      await hand.press('Enter');
      await expect.poll(() => getFocus(page)).toBe(`stations[${row}].exercise`);
      await hand.press('Tab');
      await hand.type(reps);
      await hand.press('Tab');
      // On over caution and details to the next place.
      if (row < 3) for (const _ of [1, 2]) await hand.press('Tab');
    }
    expect(await page.locator('.chk .need').allTextContents()).toEqual([
      expect.stringContaining('No squad comes to station E.'),
      expect.stringContaining('No squad comes to station F.'),
    ]);

    hand.begin('routes');
    await hand.click(page.getByRole('button', { name: 'Rotate for me' }));
    expect((await readPlan()).squads.map(({ route }) => route.length)).toEqual([4, 4, 4, 4]);
    await hand.click(page.getByRole('button', { name: 'Ink these routes' }));
    await expect.poll(() => page.locator('.chk .need').count()).toBe(0);

    await expect
      .poll(async () => (await readPlan()).squads.map(({ route }) => route.length))
      .toEqual([6, 6, 6, 6]);
    const plan = await readPlan();
    expect([...checkPlan(plan), ...checkReadiness(plan)]).toEqual([]);
    expect(plan.stations.map(({ place, clue, reps }) => [place, clue, String(reps)])).toEqual(
      STATIONS.map(({ place, clue, reps }) => [place, clue, reps]),
    );
    expect(plan.stations.every(({ libraryCode, caution }) => libraryCode && caution)).toBe(true);
    const squads = (await readPupils()).trim().split('\n').slice(1);
    const sizes = plan.squads.map(({ code }) => squads.filter((line) => line.includes(`,${code},`)).length);
    expect(sizes).toEqual([6, 6, 6, 6]);

    await page.reload();
    await page.getByRole('button', { name: 'Place of F: Slipway Bench. Change it' }).waitFor();
    expect(complaints).toEqual([]);
    const told = [...hand.counts].map(([name, acts]) => `${name} ${acts}`).join(', ');
    const sum = [...hand.counts.values()].reduce((all, one) => all + one, 0);
    process.stdout.write(`Keys, clicks and texts for a whole plan: ${told}; ${sum} in all.\n`);
    expect(sum).toBeLessThanOrEqual(MOST_ACTS);
    await context.close();
  });

  test('by keyboard alone: a word, a choice, a stop of a route and a pupil’s squad, and all of it back', async () => {
    const { page, context, complaints } = await openPlan(desk);
    const before = await readPlan();
    // A word is typed at, Escape gives up, Enter decides and stays.
    await at(page, 'stations[0].reps').focus();
    await page.keyboard.type('9');
    await page.keyboard.press('Escape');
    expect(await at(page, 'stations[0].reps').textContent()).toBe('8');
    await page.keyboard.type('0');
    await page.keyboard.press('Enter');
    await page.getByText('Between 1 and 200.').waitFor();
    await page.keyboard.press('Control+a');
    await page.keyboard.type('9');
    await page.keyboard.press('Enter');
    await expect.poll(async () => (await readPlan()).stations[0]?.reps).toBe(9);
    await expect.poll(() => getFocus(page)).toBe('stations[0].reps');
    // A choice opens on the present one.
    await at(page, 'orderRule').focus();
    await page.keyboard.press('Enter');
    await page.getByRole('menuitemradio').first().waitFor();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    await expect.poll(async () => (await readPlan()).orderRule).toBe('report');
    // A stop is changed by its letter, and a problem names itself and leads to its place.
    const other = before.squads[1]?.route[0] ?? '';
    await at(page, 'squads[0].route[0]').focus();
    await page.keyboard.type(other.toLowerCase());
    const problem = page.locator('.chk .need', { hasText: `reach station ${other} in the same slot (1)` });
    await problem.waitFor();
    // At a stop the key would choose station F.
    await page.locator('.right-side').focus();
    await page.keyboard.press('f');
    await expect.poll(() => getFocus(page)).toMatch(/^squads\[\d\]\.route\[0\]$/);
    // A pupil goes to the squad of the number pressed, and the focus with them.
    const pupil = page.locator('.squad-column').nth(0).locator('[data-pupil]').first();
    const id = (await pupil.getAttribute('data-pupil')) ?? '';
    await pupil.focus();
    await page.keyboard.press('3');
    await expect.poll(readPupils).toMatch(new RegExp(`${id},.*,${before.squads[2]?.code},`));
    const moved = page.locator('.squad-column').nth(2).locator(`[data-pupil="${id}"]:focus`);
    await moved.waitFor();
    await page.keyboard.press('1');
    await expect.poll(readPupils).toMatch(new RegExp(`${id},.*,${before.squads[0]?.code},`));
    for (const _ of [1, 2, 3]) await page.keyboard.press('Control+z');
    await expect.poll(readPlan).toEqual(before);
    await problem.waitFor({ state: 'detached' });
    expect(complaints).toEqual([]);
    await context.close();
  });

  test('what cannot be saved stays on the sheet with its reason until it is mended or let go', async () => {
    const { page, context } = await openPlan(desk);
    await page.getByRole('button', { name: 'Everything about station A' }).click();
    await at(page, 'stations[0].code').click();
    await page.keyboard.type('B');
    await page.keyboard.press('Enter');
    const note = page.getByRole('alert', { name: 'Not saved yet' });
    await note.getByText('the code “B” is used twice').waitFor();
    expect(await page.locator('.stt .plate').first().textContent()).toBe('B');
    expect((await readPlan()).stations[0]?.code).toBe('A');
    expect(await findBarriers(page)).toEqual([]);
    await note.getByRole('button', { name: 'Back to what is saved' }).click();
    await note.waitFor({ state: 'detached' });
    expect(await page.locator('.stt .plate').first().textContent()).toBe('A');
    await context.close();
  });

  test('earlier states say what is different now, and lead back', async () => {
    const { page, context } = await openPlan(desk);
    await page.locator('.versions .lk').first().waitFor();
    // How many states there are: the list is told of the new one after the plan is on the disk.
    const told = page.locator('.versions .cap').first();
    const before = { plan: await readPlan(), told: await told.textContent() };
    await at(page, 'lesson.title').click();
    await page.keyboard.type('Quay circuit, again');
    await page.keyboard.press('Enter');
    await expect.poll(async () => (await readPlan()).lesson.title).toBe('Quay circuit, again');
    await expect.poll(() => told.textContent()).not.toBe(before.told);
    await page.locator('.versions .lk').first().click();
    await page.locator('.versions').getByText('“Quay circuit, again”').waitFor();
    await page.getByRole('button', { name: 'Back to this state' }).click();
    await expect.poll(readPlan).toEqual(before.plan);
    await context.close();
  });

  test('a pinnie of the school’s own has its name and colour, and exercises of the teacher’s own are taken over and forgotten', async () => {
    const { page, context, complaints } = await openPlan(desk);
    const before = await readPlan();
    await page.reload(); // Plan and the lesson's window come at once, and undo is Plan's all the same.
    await at(page, 'squads[0].pinnie').click();
    await page.getByRole('menuitemradio', { name: 'another colour' }).click();
    await at(page, 'squads[0].pinnie.name').click();
    await page.keyboard.type('crimson');
    await page.keyboard.press('Enter');
    await page.getByLabel(/^Colour of .*’s pinnie$/).fill('#aa1133');
    const readPinnie = async () => (await readPlan()).squads[0]?.pinnie;
    await expect.poll(readPinnie).toEqual({ name: 'crimson', colour: '#aa1133' });
    for (let edit = 0; edit < 3; edit += 1) await page.keyboard.press('Control+z');
    await expect.poll(readPinnie).toEqual(before.squads[0]?.pinnie);
    for (let edit = 0; edit < 3; edit += 1) await page.keyboard.press('Control+Shift+z');
    await expect.poll(readPinnie).toEqual({ name: 'crimson', colour: '#aa1133' });

    const own = { ...BUILT_IN_EXERCISES[0], code: 'gull-walk', name: 'Gull walk' };
    const library = page.locator('.library-line');
    const file = { name: 'exercises.json', mimeType: 'application/json' };
    const take = (text: string) =>
      library.locator('input').setInputFiles({ ...file, buffer: Buffer.from(text) });
    await take('{');
    await page.getByRole('alert').getByText('stops making sense').waitFor();
    await take(JSON.stringify({ format: 'routemark-exercises', version: 1, exercises: [own] }));
    await library.getByText('1 exercise of your own').waitFor();
    await at(page, 'stations[0].exercise').click();
    await page.keyboard.type('gull');
    await page
      .getByRole('option', { name: /Gull walk/ })
      .getByText('your own')
      .waitFor();
    for (const key of ['Control+a', 'Backspace', 'Escape']) await page.keyboard.press(key);
    expect(await findBarriers(page)).toEqual([]);
    await library.getByRole('button', { name: 'Forget mine' }).click();
    await library.getByText('of your own').waitFor({ state: 'detached' });
    expect(complaints).toEqual([]);
    await at(page, 'squads[0].pinnie').click();
    await page.getByRole('menuitemradio', { name: before.squads[0]?.pinnie.name ?? '' }).click();
    await expect.poll(readPlan).toEqual(before);
    await context.close();
  });

  test.each(['light', 'dark'] as const)('stands no one in the way, %s', async (theme) => {
    const { page, context, complaints } = await openPlan(desk, { theme });
    await page.getByRole('button', { name: 'Everything about station A' }).click();
    await page.getByRole('button', { name: 'Starts, legs and distances' }).click();
    await page.getByRole('button', { name: 'Rotate for me' }).click();
    await page.getByRole('button', { name: 'Form squads' }).click();
    await page.getByText('nobody has moved yet').waitFor();
    expect(await findBarriers(page)).toEqual([]);
    expect(complaints).toEqual([]);
    await context.close();
  });

  test('a lesson is copied for another day: same plan, next printing of the cards, nobody absent', async () => {
    const { page, context } = await desk.openWindow();
    await page.getByRole('button', { name: 'Copy for another day' }).first().click();
    await page.getByRole('dialog').getByLabel('Day').fill('2027-02-04');
    await page.getByRole('button', { name: 'Copy it' }).click();
    await page.getByRole('button', { name: 'Place of F: Slipway Bench. Change it' }).waitFor();
    const copy = parsePlan(await readFile(path.join(home, '2027-02-04 Quay circuit', 'plan.json'), 'utf8'));
    const { lesson, ...rest } = await readPlan();
    expect(copy).toMatchObject({
      ok: true,
      value: { ...rest, lesson: { ...lesson, date: '2027-02-04', revision: 2 } },
    });
    await context.close();
  });
});
