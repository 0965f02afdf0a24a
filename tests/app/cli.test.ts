import { mkdir, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { routemark, startRoutemark } from './command-line.ts';
import { useDemoCopies } from './demo-copies.ts';
import { gradeFolder } from './grade-folder.ts';
import { linkFolder } from './link-folder.ts';
import { checkSchema, gradeSchema, stampsSchema } from './printed-json.ts';

const demo = useDemoCopies();

/** What a run may say on the error stream: problems, each with what to do, and nothing of the program's insides. */
const PROBLEMS_ALONE = /^(! .+\n( {2}.+\n)?)*$/;

/** A run that could not be done and says why, in words that hold these. */
async function expectRefusal(args: readonly string[], words: RegExp): Promise<void> {
  const { code, stdout, stderr } = await routemark(args);
  expect({ args, code, stdout }).toEqual({ args, code: 2, stdout: '' });
  expect(stderr).toMatch(words);
  expect(stderr).not.toMatch(/\bat .*:\d+:\d+|node:internal|undefined/);
}

async function wait(until: () => Promise<boolean>): Promise<void> {
  while (!(await until())) await new Promise((done) => setTimeout(done, 10));
}

const listFolder = (folder: string): Promise<string[]> => readdir(folder).catch(() => []);

describe('help', () => {
  test('names every verb, the exit codes and the cautions', async () => {
    const { code, stdout, stderr } = await routemark(['--help'], { isFromSource: true });
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    for (const verb of [
      'demo',
      'stamps',
      'check',
      'plan',
      'walk',
      'roster',
      'exercises',
      'bring',
      'grade',
      'mark',
      'export',
    ]) {
      expect(stdout).toMatch(new RegExp(`^  ${verb}\\b`, 'm'));
    }
    expect(stdout).toContain('Exit codes: 0 done, 1 done but something needs a look, 2 could not be done.');
    expect(stdout).toContain("your school's policy");
  });

  test('of a verb says every option of it', async () => {
    const { code, stdout } = await routemark(['mark', '--help']);
    expect(code).toBe(0);
    for (const option of ['--clip', '--flag', '--squad', '--pupil', '--undo', '--list', '--reason', '--by']) {
      expect(stdout).toMatch(new RegExp(`^ {2}${option} ?.*\\S`, 'm'));
    }
  });

  test('is offered where a verb or an option is unknown or something is left out', async () => {
    await expectRefusal(['grad'], /unknown command 'grad'/);
    await expectRefusal(['grade', demo.getBase(), '--quick'], /unknown option '--quick'/);
    await expectRefusal(['export', demo.getBase()], /--out/);
  });
});

describe('grade', () => {
  test('prints squads, flags and points, and only problems beside them; 1 while flags are open', async () => {
    const { code, stdout, stderr } = await routemark(['grade', demo.getBase()]);
    expect(code).toBe(1);
    expect(stdout).toMatch(/^Harbour circuit, 9 Kelp, 2025-05-15, period 3\n/);
    expect(stdout).toContain('11 open flags');
    expect(stdout).toContain('Points by order rule');
    expect(stderr).toMatch(PROBLEMS_ALONE);
  });

  test('prints the same as JSON, with nothing beside it', async () => {
    const { code, stdout, stderr } = await routemark(['grade', demo.getBase(), '--json']);
    expect({ code, stderr }).toEqual({ code: 1, stderr: '' });
    const { squads, setAside, flags } = gradeSchema.parse(JSON.parse(stdout));
    expect(squads.map(({ clips }) => clips.length)).toEqual([7, 5, 6, 5]);
    expect(setAside).toHaveLength(10);
    expect(flags.filter(({ open }) => open)).toHaveLength(11);
    const [swapped] = flags.filter(({ code: kind }) => kind === 'out-of-order');
    expect(swapped).toMatchObject({ slot: 4, against: { slot: 3, side: 'before' } });
  });

  test('changes nothing in the lesson but its evidence', async () => {
    const lesson = await demo.copy();
    const look = async () => [
      (await readdir(lesson, { recursive: true })).sort(),
      await readFile(path.join(lesson, 'plan.json'), 'utf8'),
    ];
    const before = await look();
    const [first, second] = [await routemark(['grade', lesson]), await routemark(['grade', lesson])];
    expect(second).toEqual(first);
    expect(await look()).toEqual(before);
  });

  test('goes on where nobody reads its output any more', async () => {
    const { child, ended } = startRoutemark(['grade', demo.getBase(), '--json']);
    child.stdout?.destroy();
    expect(await ended).toMatchObject({ code: 1, stderr: '' });
  });

  test('takes the clips where they lie, and says where there are none', async () => {
    const lesson = await demo.copy();
    await rename(path.join(lesson, 'clips'), path.join(lesson, 'on the stick'));
    const elsewhere = await routemark(['grade', lesson, '--clips', path.join(lesson, 'on the stick')]);
    expect(elsewhere.stdout).toBe((await gradeFolder(demo.getBase())).text);
    const { code, stderr } = await routemark(['grade', lesson]);
    expect(code).toBe(1);
    expect(stderr).toContain('There is no folder of clips at');
    expect(stderr).toContain('name the folder with --clips');
  });
});

describe('check', () => {
  test('finds nothing to mend in the demo, in words and as JSON', async () => {
    const lesson = demo.getBase();
    const verdict = 'Harbour circuit, 9 Kelp: 6 stations, 4 squads, 24 pupils; nothing to mend.\n';
    expect(await routemark(['check', lesson])).toEqual({ code: 0, stdout: verdict, stderr: '' });
    const { code, stdout } = await routemark(['check', lesson, '--json']);
    expect(code).toBe(0);
    const found = checkSchema.parse(JSON.parse(stdout));
    expect(found).toEqual({ stations: 6, squads: 4, pupils: 24, problems: [] });
  });

  test('says what is wrong with a plan that cannot be used, and where', async () => {
    const lesson = await demo.copy();
    const file = path.join(lesson, 'plan.json');
    const sound = await readFile(file, 'utf8');
    await writeFile(file, sound.replace('"version": 2', '"version": 7'));
    await expectRefusal(['check', lesson], /newer/);
    await writeFile(file, sound.slice(0, 300));
    await expectRefusal(['grade', lesson], /plan\.json stops making sense at line \d+, column \d+/);
    await writeFile(file, sound.replace('America/Halifax', 'America/Halifux'));
    await expectRefusal(['grade', lesson], /“America\/Halifux” is no time zone/);
    await rm(file);
    await expectRefusal(['grade', lesson], /no plan\.json[\s\S]*Choose the lesson folder/);
    await mkdir(file);
    await expectRefusal(['check', lesson], /plan\.json is a folder/);
  });

  test('says so where the lesson is no folder, or not there', async () => {
    await expectRefusal(['check', path.join(demo.getBase(), 'plan.json')], /no plan\.json/);
    await expectRefusal(['grade', path.join(demo.getBase(), 'nowhere')], /no plan\.json/);
  });

  test('says what a roster lacks, and opens the lesson all the same', async () => {
    const lesson = await demo.copy();
    const file = path.join(lesson, 'roster.csv');
    const sound = await readFile(file, 'utf8');
    await writeFile(file, Buffer.from(sound, 'latin1'));
    const lettersLost = await routemark(['check', lesson]);
    expect(lettersLost).toMatchObject({ code: 1, stdout: expect.stringContaining('24 pupils; 1 problem') });
    expect(lettersLost.stderr).toMatch(/line 15: letters are lost[\s\S]*CSV UTF-8/);
    await rm(file);
    const without = await routemark(['check', lesson, '--json']);
    expect(without.code).toBe(1);
    expect(checkSchema.parse(JSON.parse(without.stdout)).problems).toMatchObject([
      { code: 'lesson-without-roster' },
    ]);
  });
});

describe('stamps', () => {
  test('reads files, folders and both, of no lesson', async () => {
    const clips = path.join(demo.getBase(), 'clips');
    const file = path.join(clips, 'MOSS', '20250515_104821.mp4');
    const one = await routemark(['stamps', file, path.join(clips, 'amber'), '--json']);
    expect(one).toMatchObject({ code: 1, stderr: '' });
    const found = stampsSchema.parse(JSON.parse(one.stdout));
    expect(found).toHaveLength(8);
    expect(found[0]).toMatchObject({ file, meaning: 'stop', trust: 'firm' });
    const text = await routemark(['stamps', file]);
    expect(text).toMatchObject({ code: 0, stderr: '' });
    expect(text.stdout).toMatch(/20250515_104821\.mp4 {2}2025-05-15T13:4\d:\d\d(\.\d+)?Z {2}±\d/);
  });

  test('names what is not there, and reads the rest', async () => {
    const file = path.join(demo.getBase(), 'clips', 'MOSS', '20250515_104821.mp4');
    const { code, stdout, stderr } = await routemark(['stamps', file, '/no/such/clip.mov', '--json']);
    expect(code).toBe(1);
    expect(stampsSchema.parse(JSON.parse(stdout))).toHaveLength(1);
    expect(stderr).toContain('There is nothing at /no/such/clip.mov.');
    expect(await routemark(['stamps', '/no/such/clip.mov'])).toMatchObject({ code: 2, stdout: '' });
  });

  test('takes local times in the zone that is named, and no zone that is none', async () => {
    const folder = await demo.copy();
    const file = path.join(folder, '20250515_104821.mp4');
    await writeFile(file, 'no film');
    const read = async (...more: string[]) =>
      stampsSchema.parse(JSON.parse((await routemark(['stamps', file, '--json', ...more])).stdout))[0];
    expect(await read()).toMatchObject({ local: '2025-05-15T10:48:21', start: null });
    expect(await read('--zone', 'America/Halifax')).toMatchObject({ start: '2025-05-15T13:48:21.000Z' });
    await expectRefusal(['stamps', file, '--zone', 'Atlantic'], /no time zone “Atlantic”/);
  });
});

describe('demo', () => {
  test('does not take the place of anything else', async () => {
    const lesson = await demo.copy();
    await expectRefusal(['demo', '--into', path.join(lesson, 'clips')], /Not an empty folder/);
    expect(await listFolder(path.join(lesson, 'clips'))).toHaveLength(4);
  });
});

const listCards = (entry: string): unknown[] => JSON.parse(entry).value.readings;

describe('Ctrl-C', () => {
  test('stops the search for cards, leaves nothing half-written and nothing wrong behind', async () => {
    const lesson = await demo.copy({ evidence: false });
    const [evidence, sheet] = [path.join(lesson, 'evidence'), path.join(lesson, 'sheet.csv')];
    // Half of the clips were looked at before, by their content's first digit.
    const known = await linkFolder(path.join(demo.getBase(), 'evidence'), evidence, (name) => name < '8');
    await writeFile(sheet, 'the sheet of last time\n');
    const run = startRoutemark(['export', lesson, '--out', sheet, '--replace', '--with-open-flags']);
    await wait(async () => (await listFolder(evidence)).length >= known + 3);
    run.interrupt();
    const stopped = 'Stopped. What was recorded before is safe.\n';
    expect(await run.ended).toEqual({ code: 2, stdout: '', stderr: stopped });
    expect((await readdir(lesson)).sort()).toEqual([
      'clips',
      'evidence',
      'plan.json',
      'roster.csv',
      'sheet.csv',
    ]);
    expect(await readFile(sheet, 'utf8')).toBe('the sheet of last time\n');
    const kept = await listFolder(evidence);
    for (const name of kept) {
      const whole = await readFile(path.join(demo.getBase(), 'evidence', name), 'utf8');
      const entry = await readFile(path.join(evidence, name), 'utf8');
      // A first look at the cards may be followed by a search; what it had read stays read.
      if (name.endsWith('.cards.json'))
        expect(listCards(whole)).toEqual(expect.arrayContaining(listCards(entry)));
      else expect(entry).toBe(whole);
    }
    expect(kept.length).toBeLessThan((await listFolder(path.join(demo.getBase(), 'evidence'))).length);
    expect((await gradeFolder(lesson)).json).toBe((await gradeFolder(demo.getBase())).json);
  });
});
