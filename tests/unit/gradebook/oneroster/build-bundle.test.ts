import { parse } from 'csv-parse/sync';
import { describe, expect, test } from 'vitest';
import { type BundleOrder, buildBundle } from '../../../../src-core/gradebook/oneroster/build-bundle.ts';
import { checkBundle } from '../../../../src-core/gradebook/oneroster/check-bundle.ts';
import { TABLES } from '../../../../src-core/gradebook/oneroster/tables.ts';
import { getSafeText } from '../../../../src-core/gradebook/oneroster/write-tables.ts';
import type { JournalDecision } from '../../../../src-core/marking/journal-event.ts';
import { scoreLesson } from '../../../../src-core/marking/points.ts';
import { replayJournal } from '../../../../src-core/marking/replay.ts';
import type { ScoreInput } from '../../../../src-core/marking/score-input.ts';
import {
  buildEvents,
  buildHarbourPlan,
  buildInput,
  buildPupil,
  confirm,
  decide,
  G_FLAG,
  PLUM_SLOTS,
  UNDECIDED,
} from '../../marking/harbour.ts';
import { buildSchoolSet, toBundle } from './school.ts';

const plan = buildHarbourPlan();

const pupils = [
  buildPupil('k-0412'),
  buildPupil('k-0414', { given: 'Junip', family: 'Sandlark', attendance: 'late', arrived: '10:55' }),
  buildPupil('k-0415', { given: 'Milo', family: 'Fogbottom', attendance: 'absent' }),
  buildPupil('k-0416', { given: 'Ansa', family: 'Kelpington', attendance: 'excused' }),
];

const settled: JournalDecision = { kind: 'flag-settled', flag: G_FLAG, settled: 'kept', reason: null };
const inked = [...'CDEFGB'].map((one) => confirm(`clip-${one}`)).concat(confirm('clip-A', 'together'));
const scoreOf = (change: Partial<ScoreInput> = {}) =>
  scoreLesson(buildInput({ pupils, decisions: decide(settled, ...inked), ...change }));

const orderOf = (version: '1.1' | '1.2', school: '1.1' | '1.2' = version): BundleOrder => ({
  version,
  school: checkBundle(toBundle(buildSchoolSet(school))),
  classId: null,
  category: null,
  scoreDate: '2025-05-16',
});

type Rows = Record<string, string>[];

/** A table of a set through a second CSV reader. */
function readTable(built: ReturnType<typeof buildBundle>, table: string): Rows {
  if (!built.ok) throw new Error(JSON.stringify(built.problems));
  return parse(built.value.get(`${table}.csv`) ?? '', { columns: true });
}

const build = (version: '1.1' | '1.2', change: Partial<ScoreInput> = {}, school = version) =>
  buildBundle(plan, scoreOf(change), orderOf(version, school));

const pick = (rows: Rows, ...columns: string[]) =>
  rows.map((row) => columns.map((column) => row[column] ?? ''));

describe('marks as a OneRoster set', () => {
  test.each([
    ['1.1', '1.1'],
    ['1.1', '1.2'],
    ['1.2', '1.1'],
    ['1.2', '1.2'],
  ] as const)('of version %s from a school’s set of %s break no rule', (version, school) => {
    const built = build(version, {}, school);
    expect(built.ok).toBe(true);
    const files = built.ok ? [...built.value] : [];
    const found = checkBundle({
      name: 'marks.zip',
      isArchive: true,
      files: files.map(([path, text]) => ({ path, text, packing: 'deflated' })),
    });
    expect(found.version).toBe(version);
    expect(found.faults).toEqual([]);
  });

  test('tell confirmed marks in full, absent pupils as not submitted, excused ones as exempt without a score', () => {
    expect(
      pick(readTable(build('1.2'), 'results'), 'studentSourcedId', 'scoreStatus', 'score', 'missing'),
    ).toEqual([
      ['k-0412', 'fully graded', '8', 'false'],
      ['k-0414', 'fully graded', '7.33', 'false'],
      ['k-0415', 'not submitted', '', 'true'],
      ['k-0416', 'exempt', '', 'false'],
    ]);
  });

  test('tell a late pupil’s share on the scale of the whole class, and say so', () => {
    const late = readTable(build('1.2'), 'results')[1];
    expect(late?.comment).toBe('late 10:55; 6 of 9 while there');
    expect(readTable(build('1.2'), 'lineItems')[0]?.resultValueMax).toBe('11');
  });

  test('are partial while an answer is nobody’s or a flag is open', () => {
    const unconfirmed = readTable(build('1.2', { decisions: decide(settled) }), 'results');
    const flagged = readTable(build('1.2', { decisions: decide(...inked) }), 'results');
    for (const rows of [unconfirmed, flagged]) {
      expect(pick(rows, 'scoreStatus', 'inProgress').slice(0, 2)).toEqual([
        ['partially graded', 'true'],
        ['partially graded', 'true'],
      ]);
    }
  });

  test('are not submitted where no clip was handed in, and incomplete where some are missing', () => {
    const without = (stations: string) =>
      PLUM_SLOTS.map((slot) =>
        stations.includes(slot.station)
          ? { ...slot, clip: null, startMs: null, position: null, orderFlag: null }
          : slot,
      );
    const nothing = { squads: [{ squad: 'plum', slots: without('ABCDEFG') }], flags: [] };
    const none = build('1.2', { ...nothing, decisions: UNDECIDED });
    expect(pick(readTable(none, 'results'), 'scoreStatus', 'score')[0]).toEqual(['not submitted', '']);
    const some = build('1.2', { squads: [{ squad: 'plum', slots: without('B') }] });
    expect(pick(readTable(some, 'results'), 'scoreStatus', 'incomplete')[0]).toEqual([
      'fully graded',
      'true',
    ]);
    expect(pick(readTable(build('1.2'), 'results'), 'incomplete')[0]).toEqual(['false']);
  });

  test('hold the points that the teacher gave where no clip was handed in', () => {
    const slots = PLUM_SLOTS.map((slot) => ({ ...slot, clip: null, startMs: null, position: null }));
    const resultOf = (change: Partial<ScoreInput>) => {
      const built = build('1.2', { squads: [{ squad: 'plum', slots }], flags: [], ...change });
      return pick(readTable(built, 'results'), 'scoreStatus', 'score', 'missing')[0];
    };
    expect(resultOf({ decisions: decide() })).toEqual(['fully graded', '3', 'false']);
    const shown: JournalDecision = {
      kind: 'points-overridden',
      of: { type: 'pupil', pupil: 'k-0412' },
      change: { type: 'to', points: 0 },
      reason: 'looked on',
    };
    const given = replayJournal(buildEvents([shown])).decisions;
    expect(resultOf({ decisions: given })).toEqual(['partially graded', '0', 'false']);
  });

  test('belong to the narrowest session of the lesson’s day and to a category of their own where the school has none', () => {
    const [item] = readTable(build('1.2'), 'lineItems');
    expect(item).toMatchObject({ academicSessionSourcedId: 'gp-may', classSourcedId: 'class-kelp' });
    expect(readTable(build('1.2'), 'categories')).toMatchObject([{ sourcedId: item?.categorySourcedId }]);
  });

  test('carry over the one class and its marked pupils, and no telephone number or password', () => {
    const built = build('1.2');
    expect(pick(readTable(built, 'classes'), 'sourcedId')).toEqual([['class-kelp']]);
    expect(pick(readTable(built, 'users'), 'sourcedId', 'phone', 'password')).toEqual(
      pupils.map(({ id }) => [id, '', '']),
    );
    expect(pick(readTable(built, 'orgs'), 'sourcedId').flat()).toEqual(['org-quay', 'org-bay']);
  });

  test('from 1.1 to 1.2 turn a user’s role into a row, and back again into a column', () => {
    expect(
      pick(readTable(build('1.2', {}, '1.1'), 'roles'), 'userSourcedId', 'role', 'orgSourcedId')[0],
    ).toEqual(['k-0412', 'student', 'org-quay']);
    expect(
      pick(readTable(build('1.1', {}, '1.2'), 'users'), 'sourcedId', 'role', 'orgSourcedIds')[0],
    ).toEqual(['k-0412', 'student', 'org-quay']);
  });

  test('have every head in the table’s order, read by another reader', () => {
    for (const version of ['1.1', '1.2'] as const) {
      const built = build(version);
      for (const [file, text] of built.ok ? built.value : []) {
        const [heads] = parse(text) as string[][];
        const table = file.replace('.csv', '');
        if (table === 'manifest') expect(heads).toEqual(['propertyName', 'value']);
        else expect(heads).toEqual(TABLES[version][table]?.map(({ name }) => name));
      }
    }
  });

  test('in 1.1, which knows no result without a score, leave such a pupil out and say so', () => {
    const built = build('1.1');
    expect(pick(readTable(built, 'results'), 'studentSourcedId').flat()).toEqual(['k-0412', 'k-0414']);
    expect(built.problems.filter(({ code }) => code === 'bundle-result-left-out')).toEqual([
      { code: 'bundle-result-left-out', pupil: 'k-0415', status: 'not submitted' },
      { code: 'bundle-result-left-out', pupil: 'k-0416', status: 'exempt' },
    ]);
  });

  test('leave a pupil out whom the school’s set does not have, and say so', () => {
    const built = build('1.2', { pupils: [...pupils, buildPupil('k-9999')] });
    expect(pick(readTable(built, 'results'), 'studentSourcedId').flat()).not.toContain('k-9999');
    expect(built.problems).toContainEqual({ code: 'bundle-pupil-unknown', pupil: 'k-9999' });
  });

  test('take a formula’s beginning off free text and say so, and leave names with commas and quotes alone', () => {
    const built = build('1.2');
    expect(pick(readTable(built, 'users'), 'familyName').flat()).toEqual([
      'Quillfeather',
      'Sandlark, the "Second"',
      'Fogbottom',
      'Kelpington',
    ]);
    expect(built.problems).toEqual([
      { code: 'bundle-text-made-safe', file: 'users.csv', id: 'k-0415', column: 'familyName' },
    ]);
  });

  test('never alter an id, not even one that begins like a formula', () => {
    const set = buildSchoolSet('1.2');
    const renamed = Object.fromEntries(
      Object.entries(set).map(([table, rows]) => [
        table,
        rows.map((row) => row.map((cell) => (cell === 'k-0412' ? '-k@0412' : cell))),
      ]),
    );
    const order = { ...orderOf('1.2'), school: checkBundle(toBundle(renamed)) };
    const built = buildBundle(plan, scoreOf({ pupils: [buildPupil('-k@0412')] }), order);
    expect(pick(readTable(built, 'users'), 'sourcedId')).toEqual([['-k@0412']]);
    expect(pick(readTable(built, 'results'), 'studentSourcedId')).toEqual([['-k@0412']]);
  });

  test('are refused without a class, or with two that could be meant', () => {
    const nobody = buildBundle(plan, scoreOf({ pupils: [buildPupil('x-1')] }), orderOf('1.2'));
    expect(nobody.problems).toEqual([{ code: 'bundle-class-unknown', classId: null }]);
    const both = [buildPupil('k-0412'), buildPupil('w-1')];
    const open = buildBundle(plan, scoreOf({ pupils: both }), orderOf('1.2'));
    expect(open.problems).toEqual([{ code: 'bundle-class-open', classIds: ['class-kelp', 'class-weed'] }]);
    const named = { ...orderOf('1.2'), classId: 'class-weed' };
    expect(
      pick(readTable(buildBundle(plan, scoreOf({ pupils: both }), named), 'results'), 'studentSourcedId'),
    ).toEqual([['w-1']]);
  });

  test('are refused where the school’s set points to a row that it does not have', () => {
    const set = buildSchoolSet('1.2');
    set.courses = [set.courses?.[0] ?? [], ['other', '', '', '', 'Art', '', '', 'org-quay', '', '']];
    const order = { ...orderOf('1.2'), school: checkBundle(toBundle(set)) };
    expect(buildBundle(plan, scoreOf(), order)).toMatchObject({
      ok: false,
      problems: [{ code: 'bundle-row-missing', file: 'courses.csv', id: 'course-pe' }],
    });
  });
});

describe('free text for other programs', () => {
  test.each([
    ['=1+2";=1+2', '1+2";=1+2'],
    ['@sum(A1)', 'sum(A1)'],
    ['\t=cmd', 'cmd'],
    ['- late', 'late'],
    ['first\r\nsecond', 'first second'],
    ['well done + more', 'well done + more'],
    ['7 of 9', '7 of 9'],
  ])('%j becomes %j', (text, safe) => expect(getSafeText(text)).toBe(safe));
});
