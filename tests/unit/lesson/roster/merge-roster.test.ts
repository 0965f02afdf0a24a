import { describe, expect, test } from 'vitest';
import { mergeRoster, withSquads } from '../../../../src-core/lesson/roster/merge-roster.ts';
import { parseClassCsv } from '../../../../src-core/lesson/roster/parse-class-csv.ts';
import { parseRoster } from '../../../../src-core/lesson/roster.ts';
import { buildSmallPlan } from '../small-plan.ts';

const ROSTER = `id,given,family,squad,stills,Locker
k-1,Ada,Marsh,teal,no,12
k-2,Bo,Reed,plum,,"7, left"
k-3,Cy,Kelp,plum,yes,9
`;
const plan = buildSmallPlan();
const pupil = (id: string, given: string, family: string) => ({ id, given, family });
const LIST = [pupil('k-1', 'Ada', 'Marsh'), pupil('k-2', 'Bo', 'Reed-Holm'), pupil('k-4', 'Di', 'Tern')];

describe('a class list merged into a roster', () => {
  test('adds who is new to the smallest squad, renames by id, marks who left, and says so', () => {
    const { text, merge } = mergeRoster({ roster: ROSTER, list: LIST, plan, left: 'keep' });
    expect(merge).toEqual({
      added: [{ ...pupil('k-4', 'Di', 'Tern'), squad: 'teal' }],
      changed: [{ was: pupil('k-2', 'Bo', 'Reed'), now: pupil('k-2', 'Bo', 'Reed-Holm') }],
      left: [pupil('k-3', 'Cy', 'Kelp')],
      back: [],
      unchanged: 1,
    });
    expect(text).toBe(
      'id,given,family,squad,stills,Locker,left\nk-1,Ada,Marsh,teal,no,12,\nk-2,Bo,Reed-Holm,plum,,"7, left",\nk-3,Cy,Kelp,plum,yes,9,yes\nk-4,Di,Tern,teal,,,\n',
    );
    const read = parseRoster(text, plan);
    expect(read.problems).toEqual([]);
    expect(read.pupils.map(({ id, stills }) => [id, stills])).toEqual([
      ['k-1', false],
      ['k-2', true],
      ['k-4', true],
    ]);
  });

  test('takes out who left where the teacher says so, and no other column', () => {
    const { text } = mergeRoster({ roster: ROSTER, list: LIST, plan, left: 'remove' });
    expect(text).not.toContain('k-3');
    expect(text.split('\n')[0]).toBe('id,given,family,squad,stills,Locker');
  });

  test('takes nobody out who left earlier and is not shown as leaving now', () => {
    const earlier = `${ROSTER.replace('Locker', 'left').replace('plum,yes,9', 'plum,yes,yes')}`;
    const { text, merge } = mergeRoster({ roster: earlier, list: LIST, plan, left: 'remove' });
    expect(merge.left).toEqual([]);
    expect(text).toContain('k-3,Cy,Kelp,plum,yes,yes');
  });

  test('never loses the do-not-film word, not even of one who left and comes back', () => {
    const others = LIST.filter(({ id }) => id !== 'k-1');
    const without = mergeRoster({ roster: ROSTER, list: others, plan, left: 'keep' });
    expect(parseRoster(without.text, plan).pupils.map(({ id }) => id)).not.toContain('k-1');
    const again = mergeRoster({ roster: without.text, list: LIST, plan, left: 'keep' });
    expect(again.merge.back).toEqual([pupil('k-1', 'Ada', 'Marsh')]);
    expect(parseRoster(again.text, plan).pupils.find(({ id }) => id === 'k-1')?.stills).toBe(false);
  });

  test('done twice changes nothing the second time', () => {
    const once = mergeRoster({ roster: ROSTER, list: LIST, plan, left: 'keep' });
    const twice = mergeRoster({ roster: once.text, list: LIST, plan, left: 'keep' });
    expect(twice.text).toBe(once.text);
    expect(twice.merge).toEqual({ added: [], changed: [], left: [], back: [], unchanged: 3 });
  });

  test('begins a roster where there is none, and keeps the teacher’s rules about who is with whom', () => {
    const list = ['p1', 'p2', 'p3', 'p4'].map((id) => pupil(id, id, 'Reed'));
    const grouping = { seed: 1, apart: [['p1', 'p3']], together: [['p2', 'p4']] };
    const { merge, text } = mergeRoster({ roster: null, list, plan: { ...plan, grouping }, left: 'keep' });
    const squadOf = new Map(merge.added.map(({ id, squad }) => [id, squad]));
    expect(squadOf.get('p1')).not.toBe(squadOf.get('p3'));
    expect(squadOf.get('p2')).toBe(squadOf.get('p4'));
    expect(parseRoster(text, plan).pupils).toHaveLength(4);
  });

  test('counts squads that wear each other’s colour by their codes', () => {
    const swapped = buildSmallPlan(({ squads: [teal, plum] }) => {
      if (teal && plum) [teal.pinnie, plum.pinnie] = [plum.pinnie, teal.pinnie];
    });
    const { merge } = mergeRoster({ roster: ROSTER, list: LIST, plan: swapped, left: 'keep' });
    expect(merge.added).toMatchObject([{ id: 'k-4', squad: 'teal' }]);
    const full = ROSTER.replace('Reed,plum', 'Reed,teal');
    const other = mergeRoster({ roster: full, list: LIST, plan: swapped, left: 'keep' });
    expect(other.merge.added).toMatchObject([{ id: 'k-4', squad: 'plum' }]);
  });

  test('gives pupils other squads without touching the rest', () => {
    expect(withSquads(ROSTER, [{ pupil: 'k-2', squad: 'teal' }])).toBe(
      ROSTER.replace('Reed,plum', 'Reed,teal'),
    );
  });
});

describe('a class list as CSV', () => {
  test('is read by heads in common use', () => {
    const csv = '\uFEFFLast Name,First Name,Student ID,Form\r\nMarsh,Ada,k-1,7D\r\n"Reed, jr",Bo,k-2,7D\r\n';
    const { columns, pupils, problems } = parseClassCsv(csv, 'class.csv', null);
    expect(columns).toEqual({ id: 'Student ID', given: 'First Name', family: 'Last Name' });
    expect(pupils).toEqual([pupil('k-1', 'Ada', 'Marsh'), pupil('k-2', 'Bo', 'Reed, jr')]);
    expect(problems).toEqual([]);
  });

  test('is read by the columns that the teacher names', () => {
    const csv = 'A,B,C\nk-1,Ada,Marsh\n';
    expect(parseClassCsv(csv, 'class.csv', null).problems).toHaveLength(3);
    const chosen = { id: 'A', given: 'B', family: 'C' };
    expect(parseClassCsv(csv, 'class.csv', chosen).pupils).toEqual([pupil('k-1', 'Ada', 'Marsh')]);
  });

  test('leaves out and names lines that are incomplete or there twice', () => {
    const csv = 'id,given,family\nk-1,Ada,Marsh\nk-2,,Reed\nk-1,Ado,Marsh\n\n';
    expect(parseClassCsv(csv, 'class.csv', null)).toMatchObject({
      pupils: [pupil('k-1', 'Ada', 'Marsh')],
      problems: [
        { code: 'import-line-incomplete', line: 3 },
        { code: 'import-id-twice', line: 4, id: 'k-1' },
      ],
    });
  });

  test.each([
    ['something else', 'hello', 'import-unreadable'],
    ['letters that were lost', 'id,given,family\nk-1,Zo\uFFFD,Marsh\n', 'import-not-utf8'],
    ['nobody', 'id,given,family\n', 'import-empty'],
  ])('of %s is refused', (_, csv, code) => {
    expect(parseClassCsv(csv, 'class.csv', null).problems.map((problem) => problem.code)).toEqual([code]);
  });
});
