import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { markLesson } from '../../../src-core/app/mark-lesson.ts';
import { openLesson } from '../../../src-core/app/open-lesson.ts';
import { openLessonPorts } from '../../../src-core/host/lesson-ports.ts';
import { makeTemporaryFolder } from '../host/temporary-folder.ts';
import { getRawPlan } from '../lesson/small-plan.ts';

function openSmallLesson(roster: string | null = 'id,given,family,squad\nk-1,Odda,Quillfeather,teal\n') {
  const folder = makeTemporaryFolder();
  writeFileSync(path.join(folder, 'plan.json'), JSON.stringify(getRawPlan()));
  if (roster !== null) writeFileSync(path.join(folder, 'roster.csv'), roster);
  const ports = openLessonPorts({ folder, signal: new AbortController().signal });
  return { folder, ports };
}

const moved = (squad: string | null) => ({ kind: 'clip-moved', clip: 'x', squad }) as const;

describe('recording decisions', () => {
  test('writes them in their order, each knowing what was decided before', async () => {
    const { ports } = openSmallLesson();
    const marked = await markLesson(ports, [moved('teal'), moved('plum')], 'Ms Kelp');
    expect(marked).toMatchObject({
      ok: true,
      value: [{ was: null, who: 'Ms Kelp' }, { was: moved('teal') }],
    });
    const lesson = await openLesson(ports);
    expect(lesson.ok && lesson.value.journal.decisions.squadOf.get('x')).toBe('plum');
  });

  test('takes them back and brings them into force, and says where there is nothing to', async () => {
    const { ports } = openSmallLesson();
    expect(await markLesson(ports, 'undo', 't')).toEqual({
      ok: false,
      problems: [{ code: 'nothing-to-undo' }],
    });
    await markLesson(ports, [moved('teal')], 't');
    await markLesson(ports, 'undo', 't');
    await markLesson(ports, 'redo', 't');
    expect(await markLesson(ports, 'redo', 't')).toEqual({
      ok: false,
      problems: [{ code: 'nothing-to-redo' }],
    });
    const lesson = await openLesson(ports);
    expect(lesson.ok && lesson.value.journal.decisions.squadOf.get('x')).toBe('teal');
  });

  test('records none where one of them cannot stand in a journal', async () => {
    const { ports, folder } = openSmallLesson();
    const tooFar = { kind: 'clip-placed', clip: 'x', slot: 40 } as const;
    expect(await markLesson(ports, [moved('teal'), tooFar], 't')).toMatchObject({
      ok: false,
      problems: [{ code: 'decision-invalid', path: 'what.slot' }],
    });
    expect(await markLesson(ports, [moved('teal')], ' ')).toMatchObject({
      ok: false,
      problems: [{ path: 'who' }],
    });
    expect(() => readFileSync(path.join(folder, 'marks.jsonl'))).toThrow(/ENOENT/);
  });
});

describe('opening a lesson', () => {
  test('goes on without a roster, and with one that lost its letters', async () => {
    const without = await openLesson(openSmallLesson(null).ports);
    expect(without).toMatchObject({ ok: true, problems: [{ code: 'lesson-without-roster' }] });
    const { ports, folder } = openSmallLesson();
    writeFileSync(
      path.join(folder, 'roster.csv'),
      Buffer.from('id,given,family,squad\nk-1,Zoé,Saltmarsh,teal\n', 'latin1'),
    );
    expect(await openLesson(ports)).toMatchObject({
      ok: true,
      problems: [{ code: 'roster-not-utf8', line: 2 }],
    });
    writeFileSync(path.join(folder, 'roster.csv'), Buffer.from('id,given,family,squad\n', 'utf16le'));
    expect(await openLesson(ports)).toMatchObject({
      ok: true,
      problems: [{ code: 'roster-not-utf8', line: 1 }],
    });
  });

  test('fails where no time could be told', async () => {
    const { ports, folder } = openSmallLesson();
    writeFileSync(path.join(folder, 'plan.json'), JSON.stringify({ ...getRawPlan(), zone: 'Atlantic' }));
    expect(await openLesson(ports)).toMatchObject({ ok: false, problems: [{ code: 'plan-zone-unknown' }] });
  });
});
