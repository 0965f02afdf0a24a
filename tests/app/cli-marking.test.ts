import { appendFile, chmod, mkdir, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { parse } from 'csv-parse/sync';
import { describe, expect, test } from 'vitest';
import type { z } from 'zod';
import { buildTeacherActs } from '../../fixtures/harbour/teacher-acts.ts';
import { findClip } from '../../src-core/app/find-clip.ts';
import type { GradedLesson } from '../../src-core/app/graded-lesson.ts';
import { routemark } from './command-line.ts';
import { useDemoCopies } from './demo-copies.ts';
import { gradeFolder } from './grade-folder.ts';
import { exportSchema, gradeSchema, markSchema } from './printed-json.ts';

const demo = useDemoCopies();

/** Who may do less than root: the tests of rights need somebody else where root runs them. */
const NOBODY = 65534;
const asNobody = process.getuid?.() === 0 ? { user: NOBODY } : {};

const mark = (lesson: string, ...args: readonly string[]) => routemark(['mark', lesson, ...args]);

async function expectRecorded(lesson: string, ...args: readonly string[]): Promise<void> {
  const { code, stdout, stderr } = await mark(lesson, ...args);
  expect({ args, code, stderr }).toEqual({ args, code: 0, stderr: '' });
  expect(stdout).toMatch(/^\d+ decisions? recorded\.\n$/);
}

async function gradeAsJson(lesson: string): Promise<z.infer<typeof gradeSchema>> {
  return gradeSchema.parse(JSON.parse((await routemark(['grade', lesson, '--json'])).stdout));
}

/** What the demo's teacher decides, one a line. */
function listDemoActs(graded: GradedLesson): string {
  const findClipId = (file: string) => findClip(graded, file)?.id ?? null;
  const acts = buildTeacherActs({
    findClipId,
    findFlagKey: ({ code, squad, file, slot }) => {
      const clip = file === null ? null : findClipId(file);
      const isIt = ({ flag }: GradedLesson['flags'][number]) =>
        flag.code === code && flag.squad === squad && flag.clip === clip;
      const fits = graded.flags
        .filter(isIt)
        .filter(({ flag }) => clip !== null || ('slot' in flag && flag.slot === slot));
      return fits[0]?.key ?? null;
    },
  });
  return acts.map((act) => `${JSON.stringify(act)}\n`).join('');
}

describe('mark', () => {
  test('records a decision of every kind, and grade shows each', async () => {
    const lesson = await demo.copy();
    const clip = ['--clip', 'Teal squad/IMG_0416.MOV'];
    await expectRecorded(
      lesson,
      ...clip,
      '--station',
      'D',
      '--slot',
      '4',
      '--performers',
      '0.2,0.5,0.8',
      '--met',
      'place,exercise,reps',
      '--not-met',
      'together',
    );
    await expectRecorded(
      lesson,
      ...clip,
      '--points',
      '+1',
      '--reason',
      'Carried the tablet for another squad',
    );
    await expectRecorded(
      lesson,
      '--clip',
      path.join(lesson, 'clips/Teal squad/20250515_110232.mp4'),
      '--give-to',
      'moss',
    );
    await expectRecorded(lesson, '--flag', 'missing:amber:4', '--keep', '--reason', 'The bench was taken');
    await expectRecorded(lesson, '--squad', 'teal', '--earns', 'care=2', '--clock', '-0:10');
    await expectRecorded(lesson, '--pupil', 'k-0418', '--attendance', 'late', '--arrived', '10:55');
    const { squads, flags, pupils } = await gradeAsJson(lesson);
    const teal = squads.find(({ code }) => code === 'teal');
    expect(teal).toMatchObject({ clock: { from: 'teacher', offsetSeconds: -10 } });
    expect(teal?.clips.find(({ file }) => file.endsWith('IMG_0416.MOV'))).toMatchObject({
      station: 'D',
      stationFrom: 'teacher',
      performers: [0.2, 0.5, 0.8],
      points: 1,
    });
    const moved = squads.find(({ code }) => code === 'moss')?.clips.map(({ file }) => file);
    expect(moved).toContain('Teal squad/20250515_110232.mp4');
    expect(flags.find(({ key }) => key === 'missing:amber:4')).toMatchObject({
      settled: 'kept',
      open: false,
    });
    expect(pupils).toContainEqual(expect.objectContaining({ id: 'k-0418', attendance: 'late' }));
  });

  test('takes decisions back and brings them into force again, one at a time', async () => {
    const lesson = await demo.copy();
    const list = [
      { kind: 'flag-settled', flag: 'missing:amber:4', settled: 'kept', reason: null },
      { kind: 'attendance-set', pupil: 'k-0418', attendance: 'absent', arrived: null },
    ];
    const input = list.map((act) => `${JSON.stringify(act)}\n`).join('');
    const recorded = await routemark(['mark', lesson, '--list', '-', '--json', '--by', 'Ms Kelp'], { input });
    const { events } = markSchema.parse(JSON.parse(recorded.stdout));
    expect(events.map(({ who, what }) => [who, what.kind])).toEqual([
      ['Ms Kelp', 'flag-settled'],
      ['Ms Kelp', 'attendance-set'],
    ]);
    await expectRecorded(lesson, '--undo');
    await expectRecorded(lesson, '--undo');
    expect((await gradeFolder(lesson)).graded.flags.every(({ answer }) => answer === null)).toBe(true);
    await expectRecorded(lesson, '--redo');
    const { graded } = await gradeFolder(lesson);
    expect(graded.flags.find(({ key }) => key === 'missing:amber:4')?.answer?.settled).toBe('kept');
    const nothing = await mark(await demo.copy(), '--undo');
    expect(nothing).toEqual({ code: 2, stdout: '', stderr: '! There is nothing to undo.\n' });
  });

  test('records nothing of a list with a slip in it, nor what no journal could hold', async () => {
    const lesson = await demo.copy();
    const good = JSON.stringify({ kind: 'clip-moved', clip: 'x', squad: 'teal' });
    const slip = await routemark(['mark', lesson, '--list', '-'], { input: `${good}\n\n{"kind":"gone"}\n` });
    expect(slip).toMatchObject({
      code: 2,
      stderr: '! Line 3 of the list is no decision; nothing was recorded.\n',
    });
    const late = await mark(lesson, '--pupil', 'k-0418', '--attendance', 'late', '--arrived', '25:99');
    expect(late).toMatchObject({ code: 2, stdout: '' });
    expect(late.stderr).toMatch(/^! Not recorded: “arrived” should hold a local time such as 10:40\.\n/);
    expect(await readdir(lesson)).not.toContain('marks.jsonl');
  });

  test('reports a torn last line, keeps what stands before it and writes on after it', async () => {
    const lesson = await demo.copy();
    await expectRecorded(lesson, '--flag', 'missing:amber:4', '--keep');
    await appendFile(path.join(lesson, 'marks.jsonl'), '{"id":"01J');
    const torn = await mark(lesson, '--flag', 'missing:moss:3', '--keep');
    expect(torn).toMatchObject({ code: 0, stdout: '1 decision recorded.\n' });
    expect(torn.stderr).toMatch(/marks\.jsonl, line 3 was cut off/);
    const { graded, advice } = await gradeFolder(lesson);
    expect(graded.flags.filter(({ answer }) => answer !== null)).toHaveLength(2);
    expect(advice.filter(({ what }) => what.includes('cut off'))).toHaveLength(1);
  });

  test('says so where the lesson may not be written, and grade reads it all the same', async () => {
    const lesson = await demo.copy({ evidence: false });
    for (const name of ['amber', 'MOSS', 'Tablet 3']) {
      await rm(path.join(lesson, 'clips', name), { recursive: true });
    }
    await chmod(lesson, 0o555);
    await chmod(path.dirname(lesson), 0o755);
    const act = JSON.stringify({ kind: 'clip-moved', clip: 'x', squad: 'teal' });
    const marked = await routemark(['mark', lesson, '--list', '-'], { input: act, ...asNobody });
    expect(marked).toMatchObject({ code: 2, stdout: '' });
    expect(marked.stderr).toMatch(
      /marks\.jsonl may not be written\.\n {2}.*Everything recorded before is safe/,
    );
    const graded = await routemark(['grade', lesson], asNobody);
    expect(graded.code).toBe(1);
    // The eighth waits: the pinnies in it are Moss’s.
    expect(graded.stdout).toContain('Teal: 7 clips for 6 slots');
  });
});

describe('export', () => {
  const readSheet = async (file: string): Promise<Record<string, string>[]> =>
    parse(await readFile(file, 'utf8'), { columns: true, bom: true });

  test('is refused while flags are open, and says so in the sheet where it is wanted all the same', async () => {
    const lesson = await demo.copy();
    const out = path.join(lesson, 'sheet.csv');
    const refused = await routemark(['export', lesson, '--out', out, '--json']);
    expect(refused).toMatchObject({ code: 2, stderr: '' });
    expect(exportSchema.parse(JSON.parse(refused.stdout))).toMatchObject({
      out: null,
      isFinal: false,
      problems: [{ code: 'hand-in-flags-open', openFlags: 11 }],
    });
    expect(await readdir(lesson)).not.toContain('sheet.csv');
    const args = ['--columns', 'Id=pupil,State=state,Score=points'];
    const written = await routemark(['export', lesson, '--out', out, '--with-open-flags', ...args]);
    expect(written).toMatchObject({ code: 1, stderr: '' });
    expect(written.stdout).toMatch(
      /sheet\.csv: 24 pupils, not final: \d+ marks unconfirmed, \d+ flags open\.\n/,
    );
    const rows = await readSheet(out);
    expect(rows).toHaveLength(24);
    expect(Object.keys(rows[0] ?? {})).toEqual(['Id', 'State', 'Score']);
    expect(rows.filter(({ State }) => State?.includes('not final')).length).toBeGreaterThan(20);
  });

  test('is final once everything is decided, and comes out the same again', async () => {
    const lesson = await demo.copy();
    const input = listDemoActs((await gradeFolder(lesson)).graded);
    expect(await routemark(['mark', lesson, '--list', '-'], { input })).toMatchObject({
      code: 0,
      stderr: '',
    });
    const [out, again] = [path.join(lesson, 'sheet.csv'), path.join(lesson, 'again.csv')];
    const final = `${out}: 24 pupils, final.\n`;
    expect(await routemark(['export', lesson, '--out', out])).toEqual({ code: 0, stdout: final, stderr: '' });
    await routemark(['export', lesson, '--out', again]);
    expect(await readFile(again, 'utf8')).toBe(await readFile(out, 'utf8'));
    expect((await readSheet(out)).every(({ State }) => !/unconfirmed|not final/.test(State ?? ''))).toBe(
      true,
    );
  });

  test('never takes the place of the lesson’s own files or of a clip', async () => {
    const lesson = await demo.copy();
    const roster = await readFile(path.join(lesson, 'roster.csv'), 'utf8');
    for (const own of ['roster.csv', 'clips/amber/VID_20250515_102526.mp4']) {
      const args = ['export', lesson, '--out', path.join(lesson, own), '--with-open-flags'];
      const { code, stderr } = await routemark(args);
      expect(code).toBe(2);
      expect(stderr).toMatch(/belongs to the lesson or lies among its clips\. Write --out/);
    }
    expect(await readFile(path.join(lesson, 'roster.csv'), 'utf8')).toBe(roster);
  });

  test('says where a sheet cannot be written, and which columns make no sense', async () => {
    const lesson = await demo.copy();
    await mkdir(path.join(lesson, 'taken.csv'));
    const run = (...args: string[]) => routemark(['export', lesson, '--with-open-flags', ...args]);
    expect((await run('--out', path.join(lesson, 'taken.csv'))).stderr).toMatch(/taken\.csv is a folder/);
    expect((await run('--out', path.join(lesson, 'no/where.csv'))).stderr).toMatch(
      /The folder of .* is not there/,
    );
    expect((await run('--out', path.join(lesson, 'x.csv'), '--columns', 'Grade')).stderr).toMatch(
      /columns make no sense/,
    );
    expect((await readdir(lesson)).filter((name) => name.endsWith('.tmp') || name === 'x.csv')).toEqual([]);
  });

  test('writes the sheet though the record of it fails, and says so', async () => {
    const lesson = await demo.copy();
    const out = path.join(lesson, 'out');
    await mkdir(out);
    await chmod(out, 0o777);
    await writeFile(path.join(lesson, 'marks.jsonl'), '');
    await chmod(lesson, 0o555);
    await chmod(path.dirname(lesson), 0o755);
    const sheet = path.join(out, 'sheet.csv');
    await chmod(path.join(lesson, 'marks.jsonl'), 0o444);
    const end = await routemark(['export', lesson, '--out', sheet, '--with-open-flags'], asNobody);
    expect(end).toMatchObject({ code: 1, stdout: expect.stringContaining('24 pupils, not final') });
    expect(end.stderr).toMatch(/marks\.jsonl may not be written/);
    expect(await readSheet(sheet)).toHaveLength(24);
  });
});
