import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { buildDemoLesson } from '../../fixtures/build-demo-lesson.ts';
import decisions from '../../fixtures/harbour/decisions.json' with { type: 'json' };
import expected from '../../fixtures/harbour/expected.json' with { type: 'json' };
import plan from '../../fixtures/harbour/plan.json' with { type: 'json' };
import { canBrowse, openTestDesk, type TestDesk } from './browser.ts';
import { exportByCommandLine } from './export-again.ts';
import { type Hand, openHand } from './hand.ts';
import { linkDemoEvidence } from './link-folder.ts';

/** The most that a lesson may cost from drop to sheet, by clip. */
const MOST_A_CLIP = 1.5;

/** Until every stamp is read and every picture searched, and this page shows it. */
async function waitForRead(desk: TestDesk, page: Page): Promise<void> {
  await page.waitForFunction(() => /^#\/[0-9a-f]{16}\//.test(location.hash));
  const lesson = /#\/([0-9a-f]{16})/.exec(page.url())?.[1] ?? '';
  const isRead = async () => {
    const view = (await desk.desk.lessons.find(lesson))?.getView();
    return view?.reading.state === 'read' && view.clips.length > 0;
  };
  await expect.poll(isRead, { timeout: 300_000, interval: 200 }).toBe(true);
  const way = page.locator('.way');
  await expect.poll(() => way.textContent()).toMatch(/\d+ left|all inked/);
  await expect.poll(() => way.textContent()).not.toMatch(/reading/);
}

/** Until every clip was watched whole, and this page has every proposal. */
async function waitForWatched(desk: TestDesk, page: Page): Promise<void> {
  const lesson = /#\/([0-9a-f]{16})/.exec(page.url())?.[1] ?? '';
  const isWatched = async () => {
    const view = (await desk.desk.lessons.find(lesson))?.getView();
    const films = view?.clips.filter(({ criteria, holds }) => criteria && holds === 'video') ?? [];
    return films.length > 0 && films.every(({ seen }) => seen.watched === 'in-vain' || seen.reps !== null);
  };
  await expect.poll(isWatched, { timeout: 400_000, interval: 500 }).toBe(true);
}

/** Criteria of a clip that the machine proposes as not met. */
async function countObjections(desk: TestDesk, page: Page, file: string): Promise<number> {
  const lesson = /#\/([0-9a-f]{16})/.exec(page.url())?.[1] ?? '';
  const view = (await desk.desk.lessons.find(lesson))?.getView();
  // Brought in, a clip keeps its name and not its folder's.
  const name = path.basename(file);
  const clip = view?.clips.find(({ copies }) => copies.some((copy) => path.basename(copy.path) === name));
  return clip?.proposals.filter(({ met }) => !met).length ?? 0;
}

/** The demo's file on the desk, told by the head of the screen: squad and station. */
async function readFileOnDesk(page: Page): Promise<string> {
  const head = (await page.locator('.idrow h1').textContent()) ?? '';
  const squad = plan.squads.find(({ name }) => head.includes(name));
  const station = /at\s*([A-F])/.exec(head)?.[1] ?? '';
  const slot = squad?.route.indexOf(station) ?? -1;
  const walks = expected.squads as Record<string, { bySlot: (string | null)[] }>;
  const file = walks[squad?.code ?? '']?.bySlot[slot];
  return (
    file ?? expected.clips.find((clip) => clip.filmedBy === squad?.code && clip.slot === slot)?.file ?? ''
  );
}

describe.skipIf(!canBrowse())('a full lesson in a browser', () => {
  let desk: TestDesk;
  let tablets: string;

  beforeAll(async () => {
    tablets = await mkdtemp(path.join(tmpdir(), 'routemark-tablets-'));
    await buildDemoLesson(path.join(tablets, 'demo'));
    desk = await openTestDesk({ lesson: 'demo', withoutClips: true });
  });

  afterAll(async () => {
    await desk.close();
    await rm(tablets, { recursive: true, force: true });
  });

  test('goes from the tablets’ folders to the sheet that the command line writes', async () => {
    const hand = openHand();
    const first = await desk.openWindow({ isWatchingByItself: true });
    let { page } = first;
    const folders = path.join(tablets, 'demo', 'clips');
    const squads = (await readdir(folders)).map((name) => path.join(folders, name));

    // Bring in: one drop, then one press for each thing that waits.
    await page.locator('.dropzone').waitFor();
    await hand.drop(page, squads);
    await waitForRead(desk, page);
    const remedies = page.locator('.pr .rem .btn.ink');
    for (let waiting = await remedies.count(); waiting > 0; waiting = await remedies.count()) {
      await hand.click(remedies.first());
      await expect.poll(() => remedies.count()).toBeLessThan(waiting);
    }

    // Line up: one key a flag; the first one leads there by itself. Watching may raise one more, so it is waited for.
    await waitForWatched(desk, page);
    const flags = page.locator('.way a, .way button').filter({ hasText: 'Line up' });
    const countFlags = async () => Number(/(\d+) flag/.exec((await flags.textContent()) ?? '')?.[1] ?? 0);
    if ((await countFlags()) > 0) await hand.press(page, 'f');
    for (let open = await countFlags(); open > 0; open = await countFlags()) {
      await hand.press(page, 'k');
      await expect.poll(countFlags).toBeLessThan(open);
    }

    // Review: one key a clean clip; the page is closed and opened again in the middle, and then the program.
    await hand.press(page, 'Control+4');
    let marked = 0;
    let clean = 0;
    let cleanKeys = 0;
    // What the machine proposes against a clip that the teacher finds clean costs a key each.
    let objections = 0;
    // What was inked never comes back to the desk, whatever was closed in between.
    const seen: string[] = [];
    const isLeft = async () => (await page.locator('.idrow h1').count()) > 0;
    await page.locator('.idrow h1, .blank').first().waitFor();
    while (await isLeft()) {
      const file = await readFileOnDesk(page);
      const decision = decisions.clips.find((clip) => clip.file === file);
      expect(decision, `a decision of the demo's teacher about ${file}`).toBeDefined();
      const before = hand.done.length;
      const open = await page.locator('.cr.look h3').allTextContents();
      const notMet: readonly string[] = decision?.notMet ?? [];
      const unmet = plan.rubric.clip.filter(({ code }) => notMet.includes(code));
      const isNoToAll = unmet.length > 1 && open.every((label) => unmet.some((one) => one.label === label));
      // What the machine proposes otherwise than the teacher decides, either way, costs a key more.
      for (const { code } of isNoToAll ? [] : plan.rubric.clip) {
        const key = String(plan.rubric.clip.findIndex((criterion) => criterion.code === code) + 1);
        const no = page
          .locator('.cr')
          .nth(Number(key) - 1)
          .locator('input')
          .nth(1);
        const wanted = unmet.some((one) => one.code === code);
        const isShown = async () => ((await isPencilledNo(no)) || (await no.isChecked())) === wanted;
        const isOpen = open.includes(plan.rubric.clip[Number(key) - 1]?.label ?? '');
        if (isOpen && !wanted) continue;
        for (let tries = 0; !(await isShown()) && tries < 3; tries += 1) await hand.press(page, key);
        expect(await isShown(), `${file} ${code}`).toBe(true);
      }
      const hasOpen = (await page.locator('.cr.look').count()) > 0;
      const title = await page.locator('.idrow h1').textContent();
      expect(seen, `after ${marked} clips`).not.toContain(title);
      seen.push(title ?? '');
      // Just opened again, its proposals may have come this moment: a key confirms what stood there for a while.
      if (marked === 8 || marked === 14) await page.waitForTimeout(SEEN_MS);
      await hand.press(page, hasOpen ? (isNoToAll ? 'x' : 'y') : 'Enter');
      await expect
        .poll(async () => ((await isLeft()) ? page.locator('.idrow h1').textContent() : null))
        .not.toBe(title);
      marked += 1;
      if (decision?.notMet.length === 0) {
        clean += 1;
        objections += await countObjections(desk, page, file);
        cleanKeys += hand.done.length - before;
      }
      // What is not said to be saved may be lost when the page dies; what is, may not.
      if (marked === 8 || marked === 14)
        await page
          .locator('.foot')
          .filter({ hasText: /Saved \d/ })
          .waitFor();
      if (marked === 8) page = await reopenPage(page);
      if (marked === 14) page = await reopenProgram(desk, page);
    }
    expect(await page.locator('.way').textContent()).toContain('all inked');
    expect(cleanKeys).toBe(clean + objections);

    await markSquads(hand, page);

    // What the way itself costs, up to the sheet, the way back into a closed program included.
    await hand.press(page, 'Control+6');
    const write = page.locator('.fin .write');
    await page.waitForFunction(() => !document.querySelector('.fin .write')?.hasAttribute('disabled'));
    const wayCost = hand.done.length + 1;
    const clips = expected.clips.length;
    expect(wayCost / clips).toBeLessThanOrEqual(MOST_A_CLIP);

    // Beside the way, for not every lesson needs them: an override with its reason, and a decision taken back.
    const before = hand.done.length;
    await override(hand, page);
    const withOverride = wayCost + hand.done.length - before;
    await hand.press(page, 'Control+4');
    await hand.click(page.locator('.punch.ink').first());
    const answers = page.locator('.cr input');
    const answered = async () => (await answers.all()).length > 0 && (await answers.nth(1).isChecked());
    await page.locator('.cr').first().waitFor();
    await hand.press(page, '1');
    await expect.poll(answered).toBe(true);
    await hand.press(page, 'Control+z');
    await expect.poll(answered).toBe(false);
    process.stdout.write(
      `full lesson: ${wayCost} keys and clicks for ${clips} clips, ${(wayCost / clips).toFixed(2)} a clip, squads’ points and a start of the program in the middle included, ${(withOverride / clips).toFixed(2)} with an override and its reason; ${clean} clean clips at one key each, ${objections} more where the machine proposed otherwise; ${hand.done.length - before} more for that override and an undo\n`,
    );

    await hand.press(page, 'Control+6');
    await page.waitForFunction(() => !document.querySelector('.fin .write')?.hasAttribute('disabled'));
    await hand.click(write.or(page.locator('.fin .write')).first());
    await page.locator('.fin [role=status].read').waitFor();

    const [name = ''] = await readdir(path.join(desk.folder, 'hand-in'));
    const sheet = await readFile(path.join(desk.folder, 'hand-in', name));
    // The command line goes by what was read of the clips elsewhere: nothing of this desk's own reading.
    const fresh = path.join(tablets, 'demo');
    await linkDemoEvidence(fresh);
    expect(sheet.equals(await exportByCommandLine(desk.folder, fresh))).toBe(true);
    expect(first.complaints).toEqual([]);
  }, 900_000);
});

/** The squads' own points: those that fall short by hand, full points to all others at one press. */
async function markSquads(hand: Hand, page: Page): Promise<void> {
  // Behind the last clip the way to Scores has the focus.
  await page.getByRole('button', { name: 'Go to Scores' }).waitFor();
  await hand.press(page, 'Enter');
  for (const { squad, ...given } of decisions.squadPoints)
    for (const [code, points] of Object.entries(given)) {
      const { label = '', maxPoints } = plan.rubric.squad.find((one) => one.code === code) ?? {};
      if (points === maxPoints) continue;
      const { name = '' } = plan.squads.find((one) => one.code === squad) ?? {};
      const field = page.locator('select.give').and(page.getByLabel(label)).and(page.getByLabel(name));
      await hand.pick(page, field, String(points));
      await expect.poll(() => field.inputValue()).toBe(String(points));
    }
  await hand.click(page.getByRole('button', { name: 'Full points to the rest' }));
  await expect.poll(() => page.locator('.way').textContent()).not.toMatch(/to settle/);
}

/** Whether a box is the machine's own suggestion, and nobody has decided. */
async function isPencilledNo(no: Locator): Promise<boolean> {
  const isProposed = (await no.locator('xpath=ancestor::label').getAttribute('class'))?.includes('prop');
  const answers = no.locator('xpath=ancestor::div[@role="radiogroup"]').locator('input:checked');
  return isProposed === true && (await answers.count()) === 0;
}

async function reopenPage(page: Page): Promise<Page> {
  const left = await page.locator('.way').textContent();
  const url = page.url();
  const context = page.context();
  await page.close();
  const next = await context.newPage();
  await next.goto(url.replace(/(#\/[^/]+\/review).*/, '$1'));
  await next.locator('.idrow h1').waitFor();
  await expect.poll(() => next.locator('.way').textContent()).toBe(left);
  return next;
}

/** Closes window and program, and starts again: the lesson opens where it was left. */
/** Longer than proposals must stand before a key confirms them. */
const SEEN_MS = 500;

async function reopenProgram(desk: TestDesk, page: Page): Promise<Page> {
  const context = page.context();
  await page.close();
  await desk.stopHost();
  await desk.startHost();
  const next = await context.newPage();
  await next.goto(desk.makeAddress());
  await next.locator('.way').waitFor();
  await waitForRead(desk, next);
  await next.locator('.idrow h1').waitFor();
  return next;
}

async function override(hand: Hand, page: Page): Promise<void> {
  const [wanted] = decisions.overrides;
  const roster = await readFile(new URL('../../fixtures/harbour/roster.csv', import.meta.url), 'utf8');
  const [, given = '', , squad = ''] =
    roster
      .split('\n')
      .map((line) => line.split(','))
      .find(([id]) => id === wanted?.pupil) ?? [];
  const name = plan.squads.find(({ code, name: called }) => code === squad || called === squad)?.name ?? '';
  await hand.press(page, 'Control+5');
  await hand.click(page.getByRole('button', { name: `${name}, show its pupils` }));
  await hand.click(page.locator('.pu .op').filter({ hasText: given }));
  await hand.press(page, 'e');
  await hand.tabTo(page, page.getByLabel('How many'));
  await hand.type(page, String(wanted?.addPoints));
  await hand.tabTo(page, page.getByLabel('Reason'));
  await hand.type(page, wanted?.reason ?? '');
  await hand.press(page, 'Enter');
  await page
    .locator('.pu .adj')
    .filter({ hasText: wanted?.reason ?? '' })
    .waitFor();
}
