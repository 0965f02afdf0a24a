import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { routemark } from './command-line.ts';

const HARBOUR = new URL('../../fixtures/harbour/', import.meta.url);
const [parent, env] = [{ path: '' }, { ROUTEMARK_HOME: '' }];
let lesson = '';

beforeAll(async () => {
  parent.path = await mkdtemp(path.join(tmpdir(), 'routemark-planning-'));
  env.ROUTEMARK_HOME = path.join(parent.path, 'home');
});
afterAll(() => rm(parent.path, { recursive: true, force: true }));

const run = (...args: readonly string[]) => routemark(args, { env });

/** A lesson folder with the Harbour plan and roster, no clips. */
async function writeLesson(name: string): Promise<string> {
  const made = await run(
    ...['plan', 'new', path.join(parent.path, name), '--title', 'Spring', '--school', 'Cobble Quay School'],
    ...['--class', '9 Kelp', '--date', '2025-05-15', '--zone', 'America/Halifax', '--period', '10:40-11:25'],
    ...['--code', 'SPRING'],
  );
  expect(made).toMatchObject({ code: 0, stderr: '' });
  for (const file of ['plan.json', 'roster.csv']) {
    await writeFile(path.join(parent.path, name, file), await readFile(new URL(file, HARBOUR)));
  }
  return path.join(parent.path, name);
}

const readPlan = async () => JSON.parse(await readFile(path.join(lesson, 'plan.json'), 'utf8'));

describe('planning on the command line', () => {
  beforeAll(async () => {
    lesson = await writeLesson('lesson');
  });

  test('suggests routes and writes them only when told, keeping what the plan said before', async () => {
    const unsaved = await run('plan', 'compare', lesson);
    expect(unsaved).toMatchObject({
      code: 0,
      stdout: 'The plan was never saved over another.\n',
      stderr: '',
    });
    const before = await readFile(path.join(lesson, 'plan.json'), 'utf8');
    const shown = await run('plan', 'routes', lesson, '--design', 'balanced');
    expect(shown).toMatchObject({ code: 0, stderr: '' });
    expect(shown.stdout).toContain('No two squads meet');
    expect(await readFile(path.join(lesson, 'plan.json'), 'utf8')).toBe(before);
    const saved = await run('plan', 'routes', lesson, '--design', 'balanced', '--save', '--json');
    expect(JSON.parse(saved.stdout)).toMatchObject({
      isSaved: true,
      nature: { isFreeOfMeetings: true },
      problems: [],
    });
    expect((await readPlan()).rotation.design).toBe('balanced');
    const { stdout } = await run('plan', 'versions', lesson);
    expect(stdout).toMatch(/^\d{4}-\d\d-\d\dT\d\d-\d\d-\d\d-\d{3}Z\n$/);
    expect(await readFile(path.join(lesson, 'versions', `plan ${stdout.trim()}.json`), 'utf8')).toBe(before);
    const compared = await run('plan', 'compare', lesson);
    expect(compared.stdout).toContain('Rotation, design: “balanced”, was “cyclic”.\n');
  });

  test('refuses more squads than a plan holds, before anything is written', async () => {
    const before = await readPlan();
    const refused = await run('plan', 'squads', lesson, '--count', '45', '--save');
    expect(refused).toMatchObject({ code: 2, stderr: expect.stringContaining('1 to 40 squads') });
    expect(await readPlan()).toEqual(before);
  });

  test('says which wish is to blame where there are no routes', async () => {
    const plan = await readPlan();
    const forbidden = ['A', 'B', 'C', 'D', 'E'].map((from) => [from, 'F']);
    plan.rotation.forbidden = forbidden;
    const shut = path.join(parent.path, 'shut');
    await run('plan', 'copy', lesson, shut, '--date', '2025-05-16');
    await writeFile(path.join(shut, 'plan.json'), JSON.stringify(plan));
    const { code, stdout, stderr } = await run('plan', 'routes', shut, '--design', 'cyclic');
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toContain('! There are no routes for one round for all without any of the legs A to F');
    const checked = await run('check', shut);
    expect(checked.code).toBe(1);
    expect(checked.stderr).toContain('which the rotation forbids');
  });

  test('suggests squads and writes them into plan and roster', async () => {
    // The Harbour rules keep four squads of six together, so that three squads cannot be even.
    const three = await run('plan', 'squads', lesson, '--count', '3');
    expect(three.code).toBe(0);
    expect(three.stderr).toBe(
      '! Squads have between 6 and 12 pupils, because pupils are to stay together.\n',
    );
    expect(three.stdout.match(/^\S+ \(Tablet \d\): /gm)).toHaveLength(3);
    const saved = await run('plan', 'squads', lesson, '--save', '--json');
    const { squads } = JSON.parse(saved.stdout);
    const roster = await readFile(path.join(lesson, 'roster.csv'), 'utf8');
    for (const { code: squad, pupils } of squads)
      for (const pupil of pupils) expect(roster).toMatch(new RegExp(`^${pupil},.*,${squad},`, 'm'));
    expect(await run('plan', 'squads', lesson, '--count', 'many')).toMatchObject({ code: 2, stdout: '' });
  });

  test('walks a class round and says that it is an estimate', async () => {
    const { code, stdout } = await run('walk', lesson, '--seed', '3');
    expect(code).toBe(0);
    expect(stdout).toMatch(/The last squad is done after \d+ min; the plan leaves 34 min for work\.\n/);
    expect(stdout).toContain('No squad is to be hurried');
    const { visits } = JSON.parse((await run('walk', lesson, '--json')).stdout);
    expect(visits).toHaveLength(24);
    expect((await run('walk', lesson, '--spread', '2')).code).toBe(2);
  });

  test('shows what a class list would change, and takes it in when told', async () => {
    const list = path.join(parent.path, 'class.csv');
    const roster = await readFile(path.join(lesson, 'roster.csv'), 'utf8');
    const rows = roster
      .trim()
      .split('\n')
      .slice(2)
      .map((line) => line.split(',').slice(0, 3).join(','));
    await writeFile(list, ['Student ID,First name,Surname', ...rows, 'k-9,Wren,Holm', ''].join('\n'));
    const shown = await run('roster', lesson, list);
    expect(shown).toMatchObject({ code: 0, stderr: '' });
    expect(shown.stdout).toContain('1 new, 0 renamed, 1 left, 0 back, 23 as before.\n');
    expect(await readFile(path.join(lesson, 'roster.csv'), 'utf8')).toBe(roster);
    expect((await run('roster', lesson, list, '--save')).code).toBe(0);
    const taken = await readFile(path.join(lesson, 'roster.csv'), 'utf8');
    expect(taken).toMatch(/^k-0412,.*,yes$/m);
    expect(taken).toMatch(/^k-0432,.*,no,$/m);
    const wrong = await run('roster', lesson, list, '--columns', 'id=Number');
    expect(wrong.code).toBe(2);
    expect(wrong.stderr).toContain('No column was taken for “id”');
  });

  test('copies a lesson for another day, never over one that is there', async () => {
    const target = path.join(parent.path, 'autumn');
    expect((await run('plan', 'copy', lesson, target, '--date', '2025-09-15')).code).toBe(0);
    expect((await readdir(target)).toSorted()).toEqual(['clips', 'plan.json', 'roster.csv']);
    expect((await run('plan', 'copy', lesson, target, '--date', '2025-09-15')).code).toBe(2);
    const bad = await run('plan', 'copy', lesson, path.join(parent.path, 'x'), '--date', 'soon');
    expect(bad).toMatchObject({ code: 2, stdout: '' });
    expect(bad.stderr).toContain('lesson.date');
  });

  test('lists the exercises, with a teacher’s own', async () => {
    const own = path.join(parent.path, 'own.json');
    const { exercises } = JSON.parse((await run('exercises', '--json')).stdout);
    const { from: _, ...first } = exercises[0];
    const library = {
      format: 'routemark-exercises',
      version: 1,
      exercises: [{ ...first, code: 'gull-walk', name: 'Gull walk' }],
    };
    await writeFile(own, JSON.stringify(library));
    expect((await run('exercises', '--take', own)).stdout).toMatch(/^gull-walk +Gull walk/m);
    expect((await run('exercises', '--forget')).stdout).not.toContain('gull-walk');
    expect((await run('exercises', '--take', path.join(parent.path, 'none.json'))).code).toBe(2);
  });
});
