import { mkdir, mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { markLesson, mergeIntoLesson } from '../../../src-core/app/mark-lesson.ts';
import { openJournal } from '../../../src-core/app/open-lesson.ts';
import { openLessonPorts } from '../../../src-core/host/lesson-ports.ts';

let root = '';
beforeAll(async () => {
  root = await mkdtemp(path.join(tmpdir(), 'routemark-merge-'));
});
afterAll(() => rm(root, { recursive: true, force: true }));

const open = (name: string) =>
  openLessonPorts({ folder: path.join(root, name), signal: new AbortController().signal });

test('two desks’ decisions on one lesson come together, and merging again adds nothing', async () => {
  await mkdir(path.join(root, 'here'));
  await mkdir(path.join(root, 'there'));
  const [here, there] = [open('here'), open('there')];
  await markLesson(here, [{ kind: 'station-set', clip: 'c1', station: 'A' }], 'here');
  await markLesson(there, [{ kind: 'station-set', clip: 'c2', station: 'B' }], 'there');
  const text = await readFile(path.join(root, 'there', 'marks.jsonl'), 'utf8');
  const first = await mergeIntoLesson(here, text);
  expect(first).toMatchObject({ ok: true, value: [{ who: 'there' }] });
  const again = await mergeIntoLesson(here, text);
  expect(again).toMatchObject({ ok: true, value: [] });
  const journal = await openJournal(here);
  if (!journal.ok) throw new Error('the journal does not open');
  expect([...journal.value.state.decisions.stationOf]).toEqual([
    ['c1', 'A'],
    ['c2', 'B'],
  ]);
});

test('a text that is no journal is refused and changes nothing', async () => {
  const before = await readFile(path.join(root, 'here', 'marks.jsonl'), 'utf8');
  expect(await mergeIntoLesson(open('here'), 'Dear diary')).toMatchObject({
    ok: false,
    problems: [{ code: 'journal-not-ours' }],
  });
  expect(await readFile(path.join(root, 'here', 'marks.jsonl'), 'utf8')).toBe(before);
});
