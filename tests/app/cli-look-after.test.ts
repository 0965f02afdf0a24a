import { existsSync } from 'node:fs';
import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { unzipSync, zipSync } from 'fflate';
import { expect, test } from 'vitest';
import { buildSchoolSet, toBundle } from '../unit/gradebook/oneroster/school.ts';
import { makeTemporaryFolder } from '../unit/host/temporary-folder.ts';
import { getRawPlan } from '../unit/lesson/small-plan.ts';
import { routemark } from './command-line.ts';

const ROSTER = `id,given,family,squad,attendance
k-0412,Odda,Quillfeather,teal,present
k-0416,Ansa,Kelpington,plum,excused
`;

/** A lesson as it lies on the disk before any clip was brought in, and the school's set that its roster is from. */
async function makeLesson() {
  const home = makeTemporaryFolder();
  const [lesson, school] = [path.join(home, 'lesson'), path.join(home, 'school')];
  await mkdir(path.join(lesson, 'clips', 'Teal'), { recursive: true });
  await mkdir(school);
  await writeFile(path.join(lesson, 'plan.json'), JSON.stringify(getRawPlan()));
  await writeFile(path.join(lesson, 'roster.csv'), ROSTER);
  for (const { path: file, text } of toBundle(buildSchoolSet('1.1')).files) {
    await writeFile(path.join(school, file), text);
  }
  return { home, lesson, school };
}

test('a OneRoster set is written beside the school’s own, is valid, and is kept in the record', async () => {
  const { home, lesson, school } = await makeLesson();
  const out = path.join(home, 'marks.zip');
  const lone = await routemark(['export', lesson, '--to', 'oneroster', '--out', out]);
  expect([lone.code, lone.stderr]).toEqual([2, expect.stringContaining('--school')]);
  const args = ['--to', 'oneroster', '--school', school, '--out', out];
  expect((await routemark(['export', lesson, ...args])).code).toBe(2);
  const written = await routemark(['export', lesson, ...args, '--with-open-flags']);
  expect(written.stdout).toContain('not final');
  const checked = await routemark(['validate', out, '--json']);
  expect(checked.code).toBe(0);
  expect(JSON.parse(checked.stdout)).toMatchObject({ version: '1.2', tables: { results: 2, lineItems: 1 } });
  expect(await readFile(path.join(lesson, 'marks.jsonl'), 'utf8')).toContain('marks.zip');
});

test('a set that breaks a rule is told by the rule’s name, and one that is none cannot be judged', async () => {
  const { school, lesson } = await makeLesson();
  const users = path.join(school, 'users.csv');
  await writeFile(users, (await readFile(users, 'utf8')).replace(',true,', ',True,'));
  const slip = await routemark(['validate', school]);
  expect([slip.code, slip.stderr]).toEqual([1, expect.stringMatching(/users\.csv, record 2.*\[boolean\]/)]);
  expect((await routemark(['validate', path.join(lesson, 'roster.csv')])).code).toBe(2);
});

test.each([['export', '--with-open-flags'], ['slips'], ['pupil', 'k-0412']])(
  '“%s” writes over nothing unless that is said',
  async (verb, ...more) => {
    const { home, lesson } = await makeLesson();
    const out = path.join(home, 'mine.pdf');
    await writeFile(out, 'mine');
    const args = [verb, lesson, ...more, '--out', out];
    const refused = await routemark(args);
    expect([refused.code, refused.stderr]).toEqual([2, expect.stringContaining('--replace')]);
    expect(await readFile(out, 'utf8')).toBe('mine');
    expect((await routemark([...args, '--replace'])).code).not.toBe(2);
    expect(await readFile(out, 'utf8')).not.toBe('mine');
  },
);

test('a second marking is blind, cannot settle what is not a mark, and is compared', async () => {
  const { lesson } = await makeLesson();
  const squad = ['--squad', 'teal', '--earns'];
  expect((await routemark(['agree', lesson])).code).toBe(2);
  expect((await routemark(['mark', lesson, ...squad, 'care=1'])).code).toBe(0);
  const before = await readFile(path.join(lesson, 'marks.jsonl'));
  const second = ['mark', lesson, '--second', 'Mr Skerry'];
  expect((await routemark([...second, ...squad, 'care=0'])).code).toBe(0);
  const clock = await routemark([...second, '--squad', 'teal', '--clock', '1:00']);
  expect([clock.code, clock.stderr]).toEqual([2, expect.stringContaining('second marking')]);
  expect(await readFile(path.join(lesson, 'marks.jsonl'))).toEqual(before);
  expect((await routemark([...second, ...squad, 'care=0', '--by', 'Ms Reed'])).stderr).toContain('--by');
  const firsts = await routemark([...second, '--merge', path.join(lesson, 'marks.jsonl')]);
  expect([firsts.code, firsts.stderr]).toEqual([2, expect.stringContaining('A second marking holds')]);
  const own = path.join(lesson, 'second-marks', 'mr-skerry.jsonl');
  const colleague = await routemark(['mark', lesson, '--second', 'Mr Skerry', '--merge', own]);
  expect([colleague.code, colleague.stdout]).toEqual([0, '0 decisions recorded.\n']);
  const agreed = await routemark(['agree', lesson, '--json']);
  expect(agreed.code).toBe(1);
  expect(JSON.parse(agreed.stdout)).toMatchObject({
    markings: [{ who: 'Mr Skerry', squads: [{ squad: 'teal', first: 1, second: 0 }] }],
  });
});

test('films go only with the code of the list that was shown, and the marks stay', async () => {
  const { lesson } = await makeLesson();
  await writeFile(path.join(lesson, 'clips', 'Teal', 'notes.txt'), 'seen');
  const shown = JSON.parse((await routemark(['delete', lesson, '--films', '--json'])).stdout);
  expect(shown.files).toEqual([{ path: 'clips/Teal/notes.txt', bytes: 4 }]);
  await writeFile(path.join(lesson, 'clips', 'Teal', 'late.txt'), 'not seen');
  expect((await routemark(['delete', lesson, '--films', '--confirm', shown.code])).code).toBe(2);
  const again = JSON.parse((await routemark(['delete', lesson, '--films', '--json'])).stdout);
  expect((await routemark(['delete', lesson, '--films', '--confirm', again.code])).code).toBe(0);
  expect((await readdir(lesson)).sort()).toEqual([
    'deletions.jsonl',
    'plan.json',
    'roster.csv',
    'summary.json',
  ]);
  expect((await routemark(['keep', lesson, '--until', '2025-07-31'])).stdout).toContain('that day is over');
  // Marks without their films would be other marks: none are written, and a record says why it has none.
  const sheet = path.join(lesson, 'hand-in', 'late.csv');
  const refused = await routemark(['export', lesson, '--with-open-flags', '--out', sheet]);
  expect([refused.code, refused.stderr]).toEqual([2, expect.stringContaining('were deleted on')]);
  expect(existsSync(sheet)).toBe(false);
  expect((await routemark(['pupil', lesson, 'k-0412'])).stdout).toContain('points are not worked out');
  const slips = await routemark(['slips', lesson, '--of', 'pupils']);
  expect([slips.code, slips.stderr]).toEqual([2, expect.stringContaining('were deleted on')]);
  const graded = JSON.parse((await routemark(['grade', lesson, '--json'])).stdout);
  expect(graded.problems).toMatchObject([{ code: 'films-deleted' }]);
});

test('everything goes of a lesson, too, whose plan cannot be read any more, and of no other folder', async () => {
  const { home, lesson } = await makeLesson();
  await writeFile(path.join(lesson, 'plan.json'), '{');
  await writeFile(path.join(lesson, 'clips', 'Teal', 'notes.txt'), 'seen');
  expect((await routemark(['delete', lesson, '--films'])).code).toBe(2);
  const { code } = JSON.parse((await routemark(['delete', lesson, '--all', '--json'])).stdout);
  expect((await routemark(['delete', lesson, '--all', '--confirm', code])).code).toBe(0);
  expect(await readdir(lesson)).toEqual(['deletions.jsonl']);
  expect((await routemark(['delete', home, '--all'])).code).toBe(2);
});

test('a lesson is backed up and restored, and of a damaged archive what is whole where that is asked for', async () => {
  const { home, lesson } = await makeLesson();
  const archive = path.join(home, 'kept.zip');
  expect((await routemark(['backup', lesson, archive])).stdout).toContain('read back and compared');
  const again = await routemark(['backup', lesson, archive]);
  expect([again.code, again.stderr]).toEqual([2, expect.stringContaining('kept.zip is there already')]);
  const whole = path.join(home, 'whole');
  expect((await routemark(['restore', archive, whole])).code).toBe(0);
  expect(await readFile(path.join(whole, 'roster.csv'), 'utf8')).toBe(ROSTER);
  const files = unzipSync(await readFile(archive));
  await writeFile(archive, zipSync({ ...files, 'roster.csv': new TextEncoder().encode('not the roster') }));
  const part = path.join(home, 'part');
  const damaged = await routemark(['restore', archive, part]);
  expect([damaged.code, damaged.stderr]).toEqual([2, expect.stringContaining('--whole-files')]);
  expect((await routemark(['restore', archive, part, '--whole-files'])).code).toBe(1);
  expect((await readdir(part)).sort()).toEqual(['plan.json']);
});

test('a pupil’s record and slips come from the command line too', async () => {
  const { lesson } = await makeLesson();
  const record = await routemark(['pupil', lesson, 'k-0412']);
  expect(record.stdout).toContain('# What is held on Odda Quillfeather (k-0412)');
  expect(record.stdout).not.toMatch(/Ansa|Kelpington|k-0416/);
  const slips = await routemark(['slips', lesson, '--pupil', 'k-0416']);
  expect(slips.stdout).toContain('No mark counts for you.');
  expect((await routemark(['slips', lesson, '--of', 'teams'])).code).toBe(2);
});
