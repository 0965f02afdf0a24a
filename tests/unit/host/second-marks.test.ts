import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { markLesson, mergeIntoLesson } from '../../../src-core/app/mark-lesson.ts';
import { openJournal, openLesson } from '../../../src-core/app/open-lesson.ts';
import { openSecondLesson } from '../../../src-core/app/second-marking.ts';
import { openLessonPorts } from '../../../src-core/host/lesson-ports.ts';
import { findMarkerFile, listSecondMarkers, withSecondJournal } from '../../../src-core/host/second-marks.ts';
import { getRawPlan } from '../lesson/small-plan.ts';
import { makeTemporaryFolder } from './temporary-folder.ts';

const met = (is: boolean) => [{ kind: 'criterion-marked', clip: 'c1', criterion: 'place', met: is }] as const;

async function makeLesson() {
  const folder = makeTemporaryFolder();
  await mkdir(path.join(folder, 'clips'));
  await writeFile(path.join(folder, 'plan.json'), JSON.stringify(getRawPlan()));
  await writeFile(path.join(folder, 'roster.csv'), 'id,given,family,squad\nk-1,Odda,Quillfeather,teal\n');
  const ports = openLessonPorts({ folder, signal: new AbortController().signal });
  await markLesson(ports, met(true), 'teacher');
  return { folder, ports };
}

describe('a second marking', () => {
  test('goes to a journal of its own and leaves the first to the byte', async () => {
    const { folder, ports } = await makeLesson();
    const before = await readFile(path.join(folder, 'marks.jsonl'));
    const second = withSecondJournal(ports, folder, 'skerry');
    expect((await markLesson(second, met(false), 'Skerry')).ok).toBe(true);
    expect(await readFile(path.join(folder, 'marks.jsonl'))).toEqual(before);
    expect(await readdir(path.join(folder, 'second-marks'))).toEqual(['skerry.jsonl']);
    expect(await listSecondMarkers(folder)).toEqual(['skerry']);
  });

  test('begins blind, and undo takes back the second’s own decision alone', async () => {
    const { folder, ports } = await makeLesson();
    const second = withSecondJournal(ports, folder, 'skerry');
    const first = await openLesson(ports);
    if (!first.ok) throw new Error('no lesson');
    const blind = await openSecondLesson(second, first.value);
    expect(blind.ok && blind.value.journal.decisions.answers.size).toBe(0);
    expect(await markLesson(second, 'undo', 'Skerry')).toMatchObject({
      problems: [{ code: 'nothing-to-undo' }],
    });
    await markLesson(second, met(false), 'Skerry');
    const seen = await openSecondLesson(second, first.value);
    expect(seen.ok && seen.value.journal.decisions.answers.get('c1')?.get('place')).toBe(false);
  });

  test('made on two machines merges by event, once', async () => {
    const { folder, ports } = await makeLesson();
    const here = withSecondJournal(ports, folder, 'skerry');
    const there = withSecondJournal(ports, folder, 'skerry-at-home');
    await markLesson(here, met(false), 'Skerry');
    await markLesson(
      there,
      [{ kind: 'criterion-marked', clip: 'c2', criterion: 'place', met: true }],
      'Skerry',
    );
    const text = await readFile(path.join(folder, 'second-marks', 'skerry-at-home.jsonl'), 'utf8');
    expect(await mergeIntoLesson(here, text)).toMatchObject({ ok: true, value: [{ what: { clip: 'c2' } }] });
    expect(await mergeIntoLesson(here, text)).toMatchObject({ ok: true, value: [] });
    const journal = await openJournal(here);
    // As a set: both may have been made in one millisecond, and then either is the first.
    expect(journal.ok && new Set(journal.value.state.decisions.answers.keys())).toEqual(
      new Set(['c1', 'c2']),
    );
  });

  test('is kept under a name that every disk takes', () => {
    expect(findMarkerFile('Frau Müller, 9b')).toBe('frau-müller-9b');
    expect(findMarkerFile('../../marks')).toBe('marks');
    expect(findMarkerFile('!?')).toBeNull();
  });

  test('of a lesson without one is none', async () => {
    const { folder } = await makeLesson();
    expect(await listSecondMarkers(folder)).toEqual([]);
  });
});
