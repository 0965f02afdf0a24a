import { mkdirSync, symlinkSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { isLessonsOwn } from '../../../src-core/host/lesson-own-places.ts';
import { makeTemporaryFolder } from './temporary-folder.ts';

function makeLesson() {
  const home = makeTemporaryFolder();
  const folder = path.join(home, 'lesson');
  for (const name of ['clips', 'hand-in']) mkdirSync(path.join(folder, name), { recursive: true });
  mkdirSync(path.join(home, 'films'));
  return { home, folder };
}

test.each([
  ['plan.json', true],
  ['PLAN.JSON', true],
  ['summary.json', true],
  ['deletions.jsonl', true],
  ['photos/rope.jpg', true],
  ['evidence/stills/a.jpg', true],
  ['clips/Teal squad/sheet.csv', true],
  ['second-marks/skerry.jsonl', true],
  ['sheet.csv', false],
  ['hand-in/plan.json', false],
  ['print/keys.pdf', false],
  ['my plan.json', false],
  ['../plan.json', false],
  ['../lesson 2/clips/sheet.csv', false],
])('what is written as %s of a lesson would harm it: %s', async (name, harms) => {
  const { folder } = makeLesson();
  expect(await isLessonsOwn({ folder, clipsFolder: null }, path.join(folder, name))).toBe(harms);
});

test('links lead to the same answers, and clips that lie elsewhere are the lesson’s own too', async () => {
  const { home, folder } = makeLesson();
  symlinkSync(folder, path.join(home, 'desk'));
  symlinkSync(path.join(folder, 'clips'), path.join(folder, 'hand-in', 'films'));
  const clipsFolder = path.join(home, 'films');
  const ask = (...names: readonly string[]) =>
    isLessonsOwn({ folder: path.join(home, 'desk'), clipsFolder }, path.join(home, ...names));
  expect(await ask('lesson', 'plan.json')).toBe(true);
  expect(await ask('desk', 'hand-in', 'films', 'new', 'x.csv')).toBe(true);
  expect(await ask('films', 'x.csv')).toBe(true);
  expect(await ask('x.csv')).toBe(false);
});
