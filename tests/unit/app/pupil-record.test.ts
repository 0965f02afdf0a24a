import { mkdirSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { ACCOUNT } from '../../../renderer/text/english/account.ts';
import { writeRecord } from '../../../renderer/text/english/pupil-record.ts';
import { gradeLesson } from '../../../src-core/app/grade-lesson.ts';
import { markLesson } from '../../../src-core/app/mark-lesson.ts';
import { openJournal, openLesson } from '../../../src-core/app/open-lesson.ts';
import { findPupilRecord } from '../../../src-core/app/pupil-record.ts';
import { openLessonPorts } from '../../../src-core/host/lesson-ports.ts';
import type { JournalAct } from '../../../src-core/marking/journal-event.ts';
import { makeTemporaryFolder } from '../host/temporary-folder.ts';
import { getRawPlan } from '../lesson/small-plan.ts';

const ROSTER = `id,given,family,squad,stills
k-1,Odda,Quillfeather,teal,no
k-2,Bram,Thistlewick,teal,yes
k-3,Fenna,Dunlinger,plum,yes
`;

const by = (
  of: { type: 'pupil'; pupil: string } | { type: 'squad'; squad: string },
  reason: string,
): JournalAct => ({
  kind: 'points-overridden',
  of,
  change: { type: 'by', points: 1 },
  reason,
});

const names = { squad: String, station: String, planPlace: String, clip: String, time: String };

async function readRecord(pupil: string) {
  const folder = makeTemporaryFolder();
  mkdirSync(path.join(folder, 'clips'));
  writeFileSync(
    path.join(folder, 'plan.json'),
    JSON.stringify({ ...getRawPlan(), grouping: { apart: [['k-1', 'k-3']] } }),
  );
  writeFileSync(path.join(folder, 'roster.csv'), ROSTER);
  const ports = openLessonPorts({ folder, signal: new AbortController().signal });
  const acts = [
    by({ type: 'pupil', pupil: 'k-1' }, 'carried the mats back when Bram would not'),
    by({ type: 'pupil', pupil: 'k-2' }, 'about Bram alone'),
    by({ type: 'squad', squad: 'teal' }, 'thanks to Thistlewick (k-2)'),
  ];
  expect((await markLesson(ports, acts, 'teacher')).ok).toBe(true);
  const [lesson, journal] = [await openLesson(ports), await openJournal(ports)];
  if (!lesson.ok || !journal.ok) throw new Error('no lesson');
  const job = { signal: new AbortController().signal, onProgress: () => {} };
  const graded = await gradeLesson(ports, lesson.value, job);
  return findPupilRecord(graded, { pupil, events: journal.value.events, words: ACCOUNT });
}

test('a pupil’s record holds their mark, the decisions about them and where all is kept', async () => {
  const record = await readRecord('k-1');
  expect(record).toMatchObject({
    pupil: { id: 'k-1', given: 'Odda', family: 'Quillfeather', squad: 'Teal', stills: false },
    decisions: [{ what: { kind: 'points-overridden', of: { pupil: 'k-1' } } }],
    wishes: { apart: 1, together: 0 },
  });
  expect(record?.mark.account.rows.length).toBeGreaterThan(2);
  expect(record?.keptIn).toEqual(expect.arrayContaining(['roster.csv', 'marks.jsonl', 'plan.json']));
});

test('a pupil’s record has nobody else’s name or id in any text, as data and in words', async () => {
  const record = await readRecord('k-1');
  const texts = [JSON.stringify(record), record ? writeRecord(record, names) : ''];
  for (const text of texts) {
    expect(text).toContain('Odda');
    expect(text).toContain('carried the mats back when […] would not');
    expect(text).not.toMatch(/Bram|Thistlewick|Fenna|Dunlinger|k-2|k-3/);
  }
});

test('there is no record of somebody whom the roster does not have', async () => {
  expect(await readRecord('k-9')).toBeNull();
});
