import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { buildMenu, type MenuEntry } from '../../../electron/main/build-menu.ts';
import { openCrashCount } from '../../../electron/main/crash-count.ts';
import { getFolderDialog } from '../../../electron/main/folder-dialog.ts';
import { findNamedLesson } from '../../../electron/main/named-lesson.ts';
import { findWindowFor } from '../../../electron/main/window-for-lesson.ts';
import { choosePlace, keepPlace, LEAST_SIZE, readPlace } from '../../../electron/main/window-place.ts';
import { KEY_TABLE } from '../../../renderer/ui/keys/key-table.ts';
import type { MenuCommand } from '../../../src-core/contract/events.ts';
import { makeTemporaryFolder } from '../host/temporary-folder.ts';

const LAPTOP = { x: 0, y: 25, width: 1280, height: 775 };
const BEAMER = { x: 1280, y: 0, width: 1920, height: 1080 };

describe('the window', () => {
  const place = { x: 1500, y: 100, width: 1200, height: 800, isMaximised: false };

  test('opens where it stood, as long as that screen is there', () => {
    expect(choosePlace(place, [LAPTOP, BEAMER])).toEqual(place);
    expect(choosePlace(place, [LAPTOP])).toMatchObject({ x: 0, y: 25 });
  });

  test('that shows the lesson is raised, else one at the start screen; none that is in another lesson', () => {
    const at = (address: string) => ({ webContents: { getURL: () => address } });
    const [teal, plum] = ['3f'.repeat(8), '7c'.repeat(8)];
    const busy = at(`app://desk/#/${plum}/review/1e`);
    const shows = at(`app://desk/#/${teal}/plan`);
    const [fresh, start, back] = [at(''), at('app://desk/#/'), at('app://desk/#/look-back')];
    expect(findWindowFor(teal, [busy, start, shows])).toBe(shows);
    expect(findWindowFor(teal, [busy, back, start])).toBe(start);
    expect(findWindowFor(teal, [busy, fresh])).toBe(fresh);
    expect(findWindowFor(teal, [busy, back])).toBeNull();
    expect(findWindowFor(teal, [])).toBeNull();
  });

  test('opens in the middle of the first screen the first time, never larger than it nor too small', () => {
    expect(choosePlace(null, [BEAMER])).toEqual({
      x: 1520,
      y: 90,
      width: 1440,
      height: 900,
      isMaximised: false,
    });
    expect(choosePlace(null, [{ x: 0, y: 0, width: 640, height: 480 }])).toMatchObject(LEAST_SIZE);
    expect(choosePlace(null, [])).toMatchObject({ width: 1440 });
  });

  test.each([
    ['is not a place', 'x'],
    ['lacks a figure', { x: 1, y: 1, width: 1000 }],
    ['holds no whole numbers', { ...place, x: 0.5 }],
    ['is tiny', { ...place, width: 10, height: 10 }],
    ['has its head above every screen', { ...place, y: -500 }],
    ['shows a sliver alone', { ...place, x: 3190 }],
  ])('does not open where it was kept, when that %s', (_, kept) => {
    expect(choosePlace(kept, [LAPTOP, BEAMER])).toMatchObject({ x: 0, y: 25, width: 1280, height: 775 });
  });

  test('is kept across starts', () => {
    const home = makeTemporaryFolder();
    expect(readPlace(home)).toBeNull();
    keepPlace(home, place);
    expect(readPlace(home)).toEqual(place);
  });
});

describe('a page that crashes', () => {
  test('is brought back, until it crashes again and again', () => {
    let nowMs = 0;
    const count = openCrashCount(() => nowMs);
    expect([count(), count(), count(), count()]).toEqual(['reload', 'reload', 'reload', 'ask']);
    nowMs = 60_000;
    expect(count()).toBe('reload');
  });
});

describe('a start of the program', () => {
  const OWN = path.resolve('.');
  const find = (words: readonly string[], workingFolder: string, ownFolder = OWN) =>
    findNamedLesson({ words, workingFolder, ownFolder });

  test('names a lesson by its folder or by its plan, among flags and files that are not there', () => {
    const parent = makeTemporaryFolder();
    const lesson = path.join(parent, 'lesson');
    mkdirSync(lesson);
    writeFileSync(path.join(lesson, 'plan.json'), '{}');
    writeFileSync(path.join(parent, 'other.txt'), '');
    expect(find(['--flag', 'gone', 'lesson'], parent)).toBe(lesson);
    expect(find([path.join(lesson, 'plan.json')], '/')).toBe(lesson);
    expect(find(['other.txt', '--lesson', 'https://x'], parent)).toBeNull();
    expect(find([], parent)).toBeNull();
  });

  test('again names no lesson by the program’s own folder, which stands among its words', () => {
    const own = makeTemporaryFolder();
    const lesson = path.join(own, 'lesson');
    mkdirSync(lesson);
    expect(find(['--flag', '.', 'lesson'], own, own)).toBe(lesson);
    expect(find(['--flag', own], '/', `${own}${path.sep}`)).toBeNull();
  });

  test('is not tied to any ending by the installer, so no file of another program opens here', () => {
    const packed = JSON.parse(readFileSync('electron/packaging/builder.json', 'utf8'));
    expect(packed.fileAssociations).toBeUndefined();
    const parent = makeTemporaryFolder();
    writeFileSync(path.join(parent, 'x.routemark'), '{}');
    expect(find(['x.routemark'], parent)).toBeNull();
  });

  test('of the packaged program takes no options of Node', () => {
    const { electronFuses } = JSON.parse(readFileSync('electron/packaging/builder.json', 'utf8'));
    expect(electronFuses).toMatchObject({
      enableNodeOptionsEnvironmentVariable: false,
      enableNodeCliInspectArguments: false,
      grantFileProtocolExtraPrivileges: false,
      enableCookieEncryption: true,
    });
  });
});

describe('the menu', () => {
  const flatten = (isMac: boolean, isPackaged: boolean) => {
    const told: string[] = [];
    const tell = (command: MenuCommand) => told.push(command);
    const acts = { tell, openWindow: () => told.push('new window') };
    const entries = buildMenu(acts, { isMac, isPackaged }).flatMap(({ submenu }) => submenu);
    return { told, entries };
  };
  const getRoles = (entries: readonly MenuEntry[]) =>
    entries.flatMap((entry) => ('role' in entry ? entry.role : []));

  test('asks the page for each command once', () => {
    const { told, entries } = flatten(false, true);
    for (const entry of entries) if ('click' in entry) entry.click();
    expect(told.sort()).toEqual([
      'bring-in',
      'hand-in',
      'keys',
      'new window',
      'next-flag',
      'open-lesson',
      'redo',
      'undo',
    ]);
  });

  test('shows the key that the page’s list of keys has for each command', () => {
    const { told, entries } = flatten(false, true);
    const shown = entries.flatMap((entry) => {
      if (!('click' in entry)) return [];
      entry.click();
      const id = told.at(-1) as MenuCommand;
      return entry.accelerator ? [[id, entry.accelerator.replace('CmdOrCtrl', 'ctrl').toLowerCase()]] : [];
    });
    expect(shown.length).toBeGreaterThanOrEqual(5);
    expect(shown).toEqual(shown.map(([id]) => [id, KEY_TABLE[id as MenuCommand].combo]));
  });

  test('has the window menu that macOS is used to', () => {
    expect(getRoles(flatten(true, true).entries)).toEqual(expect.arrayContaining(['minimize', 'zoom']));
  });

  test('has no tools for developers in the packaged program', () => {
    expect(getRoles(flatten(true, true).entries)).not.toContain('toggleDevTools');
    expect(getRoles(flatten(true, true).entries)).not.toContain('reload');
    expect(getRoles(flatten(true, false).entries)).toContain('toggleDevTools');
  });

  test('gives no key to two commands', () => {
    const keys = flatten(true, false).entries.flatMap((entry) =>
      'accelerator' in entry ? (entry.accelerator ?? []) : [],
    );
    expect(new Set(keys).size).toBe(keys.length);
  });
});

test('clips alone are chosen from several folders at once', () => {
  expect(getFolderDialog('clips').properties).toContain('multiSelections');
  expect(getFolderDialog('lesson').properties).not.toContain('multiSelections');
});
