import { mkdir, mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { markLesson, mergeIntoLesson } from '../../../src-core/app/mark-lesson.ts';
import { openJournal } from '../../../src-core/app/open-lesson.ts';
import { mergeIntoSecond } from '../../../src-core/app/second-marking.ts';
import { openLessonPorts } from '../../../src-core/host/lesson-ports.ts';
import { withSecondJournal } from '../../../src-core/host/second-marks.ts';

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
  // As a set: both may have been made in one millisecond, and then either is the first.
  expect(new Set(journal.value.state.decisions.stationOf)).toEqual(
    new Set([
      ['c1', 'A'],
      ['c2', 'B'],
    ]),
  );
});

test('a text that is no journal is refused and changes nothing', async () => {
  const before = await readFile(path.join(root, 'here', 'marks.jsonl'), 'utf8');
  expect(await mergeIntoLesson(open('here'), 'Dear diary')).toMatchObject({
    ok: false,
    problems: [{ code: 'journal-not-ours' }],
  });
  expect(await readFile(path.join(root, 'here', 'marks.jsonl'), 'utf8')).toBe(before);
});

test('a second marking takes in its own other copy, and nothing of the first’s', async () => {
  await mkdir(path.join(root, 'lesson'));
  const first = open('lesson');
  const [here, there] = [first, first].map((ports, at) =>
    withSecondJournal(ports, path.join(root, 'lesson'), `skerry-${at}`),
  );
  if (!here || !there) throw new Error('there are two');
  const answer = { kind: 'criterion-marked', clip: 'c1', criterion: 'place', met: true } as const;
  await markLesson(first, [answer], 'Ferrow');
  await markLesson(there, [{ ...answer, met: false }], 'Skerry');
  const read = (...names: readonly string[]) => readFile(path.join(root, 'lesson', ...names), 'utf8');
  const refused = { ok: false, problems: [{ code: 'second-marking-only' }] };
  // The very answers that a second marker may give are the first’s here.
  expect(await mergeIntoSecond(here, first, await read('marks.jsonl'))).toEqual(refused);
  const other = open('there');
  await markLesson(other, [{ kind: 'clip-moved', clip: 'c1', squad: 'teal' }], 'Skerry');
  const moved = await readFile(path.join(root, 'there', 'marks.jsonl'), 'utf8');
  expect(await mergeIntoSecond(here, first, moved)).toEqual(refused);
  const text = await read('second-marks', 'skerry-1.jsonl');
  expect(await mergeIntoSecond(here, first, text)).toMatchObject({ ok: true, value: [{ who: 'Skerry' }] });
  expect(await read('second-marks', 'skerry-0.jsonl')).toContain('"met":false');
});
