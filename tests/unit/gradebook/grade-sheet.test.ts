import { describe, expect, test } from 'vitest';
import { buildCsv } from '../../../src-core/gradebook/csv.ts';
import { buildGradeSheet, PLAIN_WORDS } from '../../../src-core/gradebook/grade-sheet.ts';
import { checkHandIn } from '../../../src-core/gradebook/hand-in-check.ts';
import type { JournalDecision } from '../../../src-core/marking/journal-event.ts';
import { scoreLesson } from '../../../src-core/marking/points.ts';
import type { ScoreInput } from '../../../src-core/marking/score-input.ts';
import { buildHarbourPlan, buildInput, buildPupil, confirm, decide, G_FLAG } from '../marking/harbour.ts';

const plan = buildHarbourPlan();

const pupils = [
  buildPupil('k-0412'),
  buildPupil('k-0414', { given: 'Junip', family: 'Sandlark', attendance: 'late', arrived: '10:55' }),
  buildPupil('k-0415', { given: 'Milo', family: 'Fogbottom', attendance: 'absent' }),
  buildPupil('k-0416', { given: 'Ansa', family: 'Kelpington', attendance: 'excused' }),
  buildPupil('k-0417', { given: 'Tove', family: 'Pebblesworth' }),
];

const mats: JournalDecision = {
  kind: 'points-overridden',
  of: { type: 'pupil', pupil: 'k-0417' },
  change: { type: 'by', points: 1 },
  reason: 'carried the mats back alone',
};

const settled: JournalDecision = { kind: 'flag-settled', flag: G_FLAG, settled: 'kept', reason: null };

const inked = [...'CDEFGB']
  .map((station) => confirm(`clip-${station}`))
  .concat(confirm('clip-A', 'together'));

const scoreOf = (change: Partial<ScoreInput> = {}) =>
  scoreLesson(buildInput({ pupils, decisions: decide(mats, settled), ...change }));

describe('the grade sheet', () => {
  test('has a row per pupil in the roster’s order; absent and excused pupils have no number', () => {
    expect(buildGradeSheet(plan, scoreOf()).rows).toEqual([
      ['k-0412', 'Quillfeather, Odda', 'Plum', 8, 11, 73, 'unconfirmed', ''],
      ['k-0414', 'Sandlark, Junip', 'Plum', 6, 9, 67, 'unconfirmed', 'late 10:55'],
      ['k-0415', 'Fogbottom, Milo', 'Plum', null, null, null, 'absent', ''],
      ['k-0416', 'Kelpington, Ansa', 'Plum', null, null, null, 'excused', ''],
      [
        'k-0417',
        'Pebblesworth, Tove',
        'Plum',
        9,
        11,
        82,
        'unconfirmed',
        'plus 1 by hand: carried the mats back alone',
      ],
    ]);
  });

  test('says in words why a late pupil is marked on the whole route', () => {
    const late = [buildPupil('k-0414', { attendance: 'late', arrived: null })];
    expect(buildGradeSheet(plan, scoreOf({ pupils: late })).rows[0]?.at(-1)).toBe(
      'late; no time of arrival: whole route counts',
    );
  });

  test('is refused where there is no pupil, flags or not', () => {
    expect(checkHandIn(scoreOf({ pupils: [] }), { evenWithOpenFlags: true }).problems).toEqual([
      { code: 'hand-in-no-pupils' },
    ]);
  });

  test('goes by the columns of the plan, or of one destination', () => {
    const columns = [
      { head: 'Student ID', field: 'pupil' as const },
      { head: 'Score', field: 'points' as const },
      { head: 'Level', field: 'scale' as const },
    ];
    const sheet = buildGradeSheet(plan, scoreOf({ decisions: decide(mats, settled, ...inked) }), { columns });
    expect(sheet.columns.map(({ head }) => head)).toEqual(['Student ID', 'Score', 'Level']);
    expect(sheet.rows[4]).toEqual(['k-0417', 9, '3']);
  });

  test('adds the state at the end where a mark is unconfirmed and no column tells it', () => {
    const columns = [{ head: 'Student ID', field: 'pupil' as const }];
    const sheet = buildGradeSheet(plan, scoreOf(), { columns });
    expect(sheet.columns.at(-1)).toMatchObject({ head: 'state', field: 'state' });
    expect(sheet.rows[0]).toEqual(['k-0412', 'unconfirmed']);
  });

  test('says in every row that it is not final while a flag is open', () => {
    const columns = [{ head: 'Student ID', field: 'pupil' as const }];
    const sheet = buildGradeSheet(plan, scoreOf({ decisions: decide() }), { columns });
    expect(sheet.rows.map((row) => row.at(-1))).toEqual([
      'unconfirmed, not final: 1 flag open',
      'unconfirmed, not final: 1 flag open',
      'absent, not final: 1 flag open',
      'excused, not final: 1 flag open',
      'unconfirmed, not final: 1 flag open',
    ]);
  });

  test('never shows a confirmed and an unconfirmed mark alike, whatever the columns', () => {
    const columns = [{ head: 'Score', field: 'points' as const }];
    const rows = (decisions: ScoreInput['decisions']) =>
      buildGradeSheet(plan, scoreOf({ decisions }), { columns }).rows;
    expect(rows(decide(settled, ...inked))[0]).toEqual([8]);
    expect(rows(decide(settled, ...inked.slice(1)))[0]).toEqual([8, 'unconfirmed']);
  });

  test('puts the state in the teacher’s words where they are given', () => {
    const words = { ...PLAIN_WORDS, state: () => 'noch offen' };
    expect(buildGradeSheet(plan, scoreOf(), { words }).rows[0]?.[6]).toBe('noch offen');
  });

  test('as CSV is what a gradebook takes', () => {
    const columns = [
      { head: 'Student ID', field: 'pupil' as const },
      { head: 'Student', field: 'name' as const },
      { head: 'Score', field: 'points' as const },
      { head: 'Max', field: 'max' as const },
      { head: 'Comment', field: 'state' as const },
    ];
    const { text, problems } = buildCsv(buildGradeSheet(plan, scoreOf(), { columns }));
    expect(problems).toEqual([]);
    expect(text.split('\r\n').slice(0, 4)).toEqual([
      'Student ID,Student,Score,Max,Comment',
      'k-0412,"Quillfeather, Odda",8,11,unconfirmed',
      'k-0414,"Sandlark, Junip",6,9,unconfirmed',
      'k-0415,"Fogbottom, Milo",,,absent',
    ]);
  });
});

describe('before handing in', () => {
  test('what is open is counted', () => {
    const { counts, problems, isFinal } = checkHandIn(scoreOf({ decisions: decide(confirm('clip-C')) }), {
      evenWithOpenFlags: false,
    });
    expect(counts).toEqual({
      slots: { inked: 1, pencilled: 5, flagged: 1, 'no-clip': 0 },
      pupils: { confirmed: 0, unconfirmed: 3, absent: 1, excused: 1 },
      openFlags: 1,
    });
    expect(problems).toEqual([{ code: 'hand-in-flags-open', openFlags: 1 }]);
    expect(isFinal).toBe(false);
  });

  test('open flags refuse, unless the teacher asks for it all the same, and it is still not final', () => {
    expect(checkHandIn(scoreOf({ decisions: decide() }), { evenWithOpenFlags: true })).toMatchObject({
      problems: [],
      isFinal: false,
    });
  });

  test('unconfirmed marks do not refuse, but are not final', () => {
    expect(checkHandIn(scoreOf(), { evenWithOpenFlags: false })).toMatchObject({
      problems: [],
      isFinal: false,
    });
  });

  test('with everything confirmed and settled, it is final', () => {
    expect(
      checkHandIn(scoreOf({ decisions: decide(settled, ...inked) }), { evenWithOpenFlags: false }),
    ).toMatchObject({
      problems: [],
      isFinal: true,
    });
  });
});
