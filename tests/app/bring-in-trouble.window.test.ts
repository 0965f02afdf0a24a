import { spawnSync } from 'node:child_process';
import { cp, mkdir, mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { writeSmallLesson } from '../contract/small-lesson.ts';
import { findBarriers } from './axe.ts';
import { canBrowse, openTestDesk, type TestDesk } from './browser.ts';

describe.runIf(canBrowse())('Bring in, when not all goes well', () => {
  let desk: TestDesk;
  let parent = '';
  let clips = '';
  let plugged = '';

  beforeAll(async () => {
    parent = await mkdtemp(path.join(tmpdir(), 'routemark-trouble-'));
    await writeSmallLesson(path.join(parent, 'lesson'));
    desk = await openTestDesk({ lesson: path.join(parent, 'lesson'), withoutClips: true });
    clips = path.join(desk.folder, 'clips');
    plugged = path.join(path.dirname(desk.folder), 'plugged in');
    const filmed = path.join(parent, 'lesson', 'clips');
    await cp(path.join(filmed, 'teal'), path.join(plugged, 'Holiday'), { recursive: true });
    await cp(path.join(filmed, 'teal'), path.join(plugged, 'tablet 1', 'DCIM', '100MEDIA'), {
      recursive: true,
    });
    await mkdir(path.join(plugged, 'Empty'));
  });
  beforeEach(() => rm(clips, { recursive: true, force: true }));
  afterAll(async () => {
    await desk?.close();
    await rm(parent, { recursive: true, force: true });
  });

  /** Chooses a folder that is plugged in, by the window's own list of folders. */
  async function bring(page: Page, folder: string): Promise<void> {
    await page.keyboard.press('o');
    for (const name of [path.basename(path.dirname(desk.folder)), 'plugged in', folder]) {
      await page.locator('.folders button', { hasText: name }).click();
    }
    await page.locator('.folder-here', { hasText: folder }).waitFor();
    await page.getByRole('button', { name: 'Choose this folder' }).click();
  }

  async function inWindow(run: (page: Page) => Promise<void>): Promise<void> {
    const { page, complaints, context } = await desk.openWindow();
    await page.locator('.tray').first().waitFor();
    await run(page);
    expect(complaints).toEqual([]);
    await context.close();
  }

  const listCopied = async () =>
    (await readdir(clips).catch(() => [])).filter((name) => !name.startsWith('.'));

  test('a folder that names no squad comes not in, and the window says why and what to do', async () => {
    await inWindow(async (page) => {
      await bring(page, 'Holiday');
      const note = page.getByRole('alert', { name: 'Nothing came in' });
      await note.getByText('no folder on its way names a squad').waitFor();
      expect(await note.getByRole('button', { name: 'Read it in place instead' }).count()).toBe(1);
      for (const colorScheme of ['light', 'dark'] as const) {
        await page.emulateMedia({ colorScheme });
        expect(await findBarriers(page), colorScheme).toEqual([]);
      }
      await note.getByRole('button', { name: 'Put away' }).click();
      await bring(page, 'Empty');
      await note.getByText(/^There is no clip in .*Empty/).waitFor();
      expect(await listCopied()).toEqual([]);
    });
  });

  test('a folder that cannot be opened any more is said to be so, with what to do', async () => {
    const pulled = path.join(plugged, 'Pulled out');
    await mkdir(pulled);
    await inWindow(async (page) => {
      await page.keyboard.press('o');
      for (const name of [path.basename(path.dirname(desk.folder)), 'plugged in'])
        await page.locator('.folders button', { hasText: name }).click();
      const folder = page.locator('.folders button', { hasText: 'Pulled out' });
      await folder.waitFor();
      await rm(pulled, { recursive: true });
      await folder.click();
      const note = page.getByRole('alert', { name: 'That did not work' });
      expect(await note.textContent()).toContain(`The folder ${pulled} cannot be opened. `);
      expect(await findBarriers(page)).toEqual([]);
      await page.keyboard.press('Escape');
    });
  });

  test('a whole tablet comes in under its label, and brought in again changes nothing', async () => {
    await inWindow(async (page) => {
      await bring(page, 'tablet 1');
      await page.getByText('3 clips copied and checked.').waitFor();
      await bring(page, 'tablet 1');
      await page.getByText('0 clips copied and checked, 3 were here already.').waitFor();
      expect(await readdir(path.join(clips, 'teal'))).toHaveLength(3);
    });
  });

  /** Puts a small disk where the lesson keeps its clips, for as long as `run` takes; where none can be mounted, not at all. */
  async function onSmallDisk(options: string, run: () => Promise<void>): Promise<void> {
    await mkdir(clips, { recursive: true });
    if (spawnSync('mount', ['-t', 'tmpfs', '-o', options, 'routemark-test', clips]).status !== 0) {
      process.stderr.write('Skipped: no small disk can be mounted here.\n');
      return;
    }
    try {
      await run();
    } finally {
      // Lazily: a clip may still be open in a reading that ends with its window.
      spawnSync('umount', ['--lazy', clips]);
    }
  }

  test('a disk that is too small is known before anything is copied', async () => {
    await onSmallDisk('size=16k', () =>
      inWindow(async (page) => {
        await bring(page, 'tablet 1');
        const note = page.getByRole('alert', { name: 'Copying stopped' });
        await note.getByText('Nothing was copied, and nothing on the tablet was touched.').waitFor();
        expect(await note.getByRole('button').first().textContent()).toBe('Go on, reading in place');
        expect(await listCopied()).toEqual([]);
      }),
    );
  });

  test('a disk that fills up midway keeps what was copied, and copying goes on from there', async () => {
    // Its own folder, the squad's and one clip, with none to spare for another.
    await onSmallDisk('size=8m,nr_inodes=4', () =>
      inWindow(async (page) => {
        await bring(page, 'tablet 1');
        const note = page.getByRole('alert', { name: 'Copying stopped' });
        await note.getByText('The disk is full').waitFor();
        const kept = (await readdir(path.join(clips, 'teal'))).filter((name) => name.startsWith('IMG_'));
        expect(kept.length).toBeGreaterThan(0);
        expect(kept.length).toBeLessThan(3);
        spawnSync('mount', ['-o', 'remount,size=8m,nr_inodes=40', clips]);
        await note.getByRole('button', { name: 'Go on copying' }).click();
        await page
          .getByText(`${3 - kept.length} clip`)
          .first()
          .waitFor();
        await page.getByText(/were here already|was here already/).waitFor();
        expect(await readdir(path.join(clips, 'teal'))).toHaveLength(3);
      }),
    );
  });
});
