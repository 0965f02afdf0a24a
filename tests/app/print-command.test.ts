import { copyFile, mkdir, mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, onTestFinished, test } from 'vitest';
import { routemark } from './command-line.ts';

const HARBOUR = fileURLToPath(new URL('../../fixtures/harbour/', import.meta.url));

/** A lesson folder with the harbour's plan and roster and no clips. */
async function openFolder(): Promise<string> {
  const folder = await mkdtemp(path.join(tmpdir(), 'routemark-print-'));
  onTestFinished(() => rm(folder, { recursive: true, force: true }));
  await mkdir(path.join(folder, 'clips'));
  for (const name of ['plan.json', 'roster.csv']) await copyFile(HARBOUR + name, path.join(folder, name));
  return folder;
}

test('“print” writes a file a part into a folder, says which, and does not write over them unasked', async () => {
  const folder = await openFolder();
  const args = ['print', folder, '--out', path.join(folder, 'print'), '--paper', 'letter', '--grey'];
  const { code, stdout, stderr } = await routemark(args);
  expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
  const names = [
    'briefing',
    'route-key',
    'answer-key',
    'station-cards',
    'clue-cards',
    'squad-sheets',
    'tablet-labels',
  ];
  expect(stdout).toBe(
    `${names.map((name) => path.join(folder, 'print', `${name}.pdf\n`)).join('')}16 pages for Letter.\n`,
  );
  expect((await readdir(path.join(folder, 'print'))).sort()).toEqual(
    names.map((name) => `${name}.pdf`).sort(),
  );
  const again = await routemark(args);
  expect(again).toMatchObject({ code: 2, stdout: '' });
  expect(again.stderr).toMatch(/briefing\.pdf is there already/);
});

test('“print --json” into one file says how many pages it has', async () => {
  const folder = await openFolder();
  const file = path.join(folder, 'cards.pdf');
  const { code, stdout } = await routemark([
    'print',
    folder,
    '--out',
    file,
    '--pages',
    'cards,clues',
    '--json',
  ]);
  expect(code).toBe(0);
  expect(JSON.parse(stdout)).toEqual({ files: [file], pages: 8, problems: [] });
  expect((await readFile(file)).subarray(0, 5).toString()).toBe('%PDF-');
});

test.each([
  [['--pages', 'posters'], /“posters” are not pages of the pack/],
  [['--paper', 'a5'], /no paper “a5”/],
])('“print %s” is refused in words', async (options, words) => {
  const folder = await openFolder();
  const { code, stdout, stderr } = await routemark([
    'print',
    folder,
    '--out',
    path.join(folder, 'x.pdf'),
    ...options,
  ]);
  expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
  expect(stderr).toMatch(words);
});

test('nothing is printed among the clips', async () => {
  const folder = await openFolder();
  const { code, stderr } = await routemark(['print', folder, '--out', path.join(folder, 'clips', 'x.pdf')]);
  expect(code).toBe(2);
  expect(stderr).toMatch(/lies among the clips/);
  expect(await readdir(path.join(folder, 'clips'))).toEqual([]);
});
