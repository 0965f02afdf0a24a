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
  expect(stderr).toMatch(/lies among its clips/);
  expect(await readdir(path.join(folder, 'clips'))).toEqual([]);
});

test('“export --to pdf” is refused while flags are open, and says on the sheet what it was asked for all the same', async () => {
  const folder = await openFolder();
  const out = path.join(folder, 'hand-in', 'grades.pdf');
  const args = ['export', folder, '--to', 'pdf', '--out', out, '--paper', 'letter'];
  const refused = await routemark(args);
  expect(refused).toMatchObject({ code: 2, stdout: '' });
  expect(refused.stderr).toMatch(/24 flags still open/);
  const written = await routemark([...args, '--with-open-flags']);
  expect(written.code).toBe(1);
  expect(written.stdout).toMatch(/^.*grades\.pdf: 24 pupils, not final/);
  expect((await readFile(out)).subarray(0, 5).toString()).toBe('%PDF-');
});

test('“slips --out” draws them, and what goes with a printed sheet alone is refused with others', async () => {
  const folder = await openFolder();
  const out = path.join(folder, 'slips.pdf');
  const { code, stdout } = await routemark(['slips', folder, '--of', 'pupils', '--out', out, '--json']);
  expect([code, JSON.parse(stdout)]).toMatchObject([0, { out, pages: 6 }]);
  const csv = await routemark(['export', folder, '--stills', 'blurred', '--out', path.join(folder, 'x.csv')]);
  expect(csv.code).toBe(2);
  expect(csv.stderr).toMatch(/go with --to pdf/);
});
