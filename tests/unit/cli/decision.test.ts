import { describe, expect, test } from 'vitest';
import { parseActs } from '../../../src-core/app/parse-acts.ts';
import { parseColumns } from '../../../src-core/app/parse-columns.ts';
import {
  buildActs,
  type DecisionOptions,
  refuseClashes,
  type WayOptions,
} from '../../../src-core/cli/decision.ts';
import { toOneLine } from '../../../src-core/cli/one-line.ts';
import { formatTable } from '../../../src-core/cli/table.ts';
import { CLEAN, grade } from '../app/small-clips.ts';

const graded = grade(CLEAN.slice(0, 3));
const decide = (options: DecisionOptions) => buildActs(options, graded);

describe('decisions as typed', () => {
  test('about a clip', () => {
    const clip = 'tA';
    const typed = {
      clip,
      station: 'B',
      giveTo: 'plum',
      slot: '2',
      met: 'place, reps',
      points: '=0',
      reason: 'cut',
    };
    expect(decide(typed)).toEqual([
      { kind: 'station-set', clip, station: 'B' },
      { kind: 'clip-moved', clip, squad: 'plum' },
      { kind: 'clip-placed', clip, slot: 1 },
      { kind: 'criterion-marked', clip, criterion: 'place', met: true },
      { kind: 'criterion-marked', clip, criterion: 'reps', met: true },
      {
        kind: 'points-overridden',
        of: { type: 'clip', clip },
        change: { type: 'to', points: 0 },
        reason: 'cut',
      },
    ]);
    expect(decide({ clip, slot: 'none', notMet: 'place', undecided: 'reps' })).toMatchObject([
      { slot: 'none' },
      { met: false },
      { met: null },
    ]);
  });

  test('hold no two things of which one would be dropped', () => {
    const typed: readonly [DecisionOptions & WayOptions, RegExp][] = [
      [{ undo: true, clip: 'tA' }, /--undo goes without --clip/],
      [{ list: '-', merge: 'other.jsonl' }, /--list goes without --merge/],
      [{ redo: true, met: 'place' }, /--redo goes without --met/],
      [{ second: 'Skerry', by: 'Ferrow', clip: 'tA' }, /leave --by out/],
    ];
    for (const [options, words] of typed) expect(() => refuseClashes(options)).toThrow(words);
    for (const options of [
      { undo: true, by: 'Ferrow' },
      { second: 'Skerry', merge: 'a.jsonl' },
      { clip: 'tA' },
    ])
      expect(() => refuseClashes(options)).not.toThrow();
    for (const subject of [
      { flag: 'missing:plum:1', clear: true },
      { squad: 'teal', earns: 'care=2' },
      { pupil: 'k-teal', attendance: 'absent' },
    ])
      expect(() => decide({ ...subject, note: 'seen' })).toThrow(/--note says nothing about a/);
    expect(() => decide({ clip: 'tA', met: 'place', notMet: 'reps,place' })).toThrow(
      /“place” stands there twice/,
    );
  });

  test('about a squad, a pupil and a flag', () => {
    expect(decide({ squad: 'teal', earns: 'care=2', clock: '-0:04' })).toEqual([
      { kind: 'squad-marked', squad: 'teal', criterion: 'care', points: 2 },
      { kind: 'clock-set', squad: 'teal', correctionSeconds: -4 },
    ]);
    expect(decide({ squad: 'teal', clock: '1:00:05' })).toMatchObject([{ correctionSeconds: 3605 }]);
    expect(decide({ pupil: 'k-teal', attendance: 'late', arrived: '09:20' })).toEqual([
      { kind: 'attendance-set', pupil: 'k-teal', attendance: 'late', arrived: '09:20' },
    ]);
    expect(decide({ flag: 'missing:plum:1', clear: true })).toMatchObject([{ settled: 'cleared' }]);
    expect(decide({ flag: 'missing:plum:1', reopen: true })).toMatchObject([{ settled: null }]);
  });

  test('taken back', () => {
    const back = decide({
      clip: 'tA',
      station: 'back',
      slot: 'back',
      giveTo: 'back',
      points: 'back',
      reason: 'slip',
    });
    expect(back).toMatchObject([{ station: null }, { squad: null }, { slot: null }, { change: null }]);
  });

  test.each<[string, DecisionOptions, RegExp]>([
    ['nothing named', { met: 'place' }, /Name one of/],
    ['two things named', { clip: 'tA', pupil: 'k-teal' }, /Name one of/],
    ['nothing decided', { clip: 'tA' }, /Say what is decided/],
    ['an unknown clip', { clip: 'zz', met: 'place' }, /No one clip is meant by “zz”/],
    ['an unknown station', { clip: 'tA', station: 'Z' }, /no station “Z”\. Known: A, B\./],
    ['an unknown criterion', { clip: 'tA', met: 'plaice' }, /Known: place, reps\./],
    ['a slot beyond every route', { clip: 'tA', slot: '3' }, /Slots go from 1 to 2/],
    ['slot 0', { clip: 'tA', slot: '0' }, /Slots go from 1/],
    ['points without a reason', { clip: 'tA', points: '+1' }, /needs a --reason/],
    ['points that are none', { clip: 'tA', points: 'two', reason: 'x' }, /no number/],
    ['more than a criterion gives', { squad: 'teal', earns: 'care=3' }, /Write 0 to 2/],
    ['a criterion without points', { squad: 'teal', earns: 'care' }, /Write 0 to 2/],
    ['an odd time span', { squad: 'teal', clock: 'soon' }, /no time span/],
    ['an unknown attendance', { pupil: 'k-teal', attendance: 'ill' }, /present, absent, excused, late/],
    [
      'an arrival of one who is not late',
      { pupil: 'k-teal', attendance: 'present', arrived: '09:00' },
      /goes with/,
    ],
    ['an unknown flag', { flag: 'missing:plum:9', keep: true }, /There is no flag/],
    ['two answers to a flag', { flag: 'missing:plum:1', keep: true, clear: true }, /Say one of/],
    [
      'what belongs to something else',
      { flag: 'missing:plum:1', keep: true, points: '1' },
      /--points says nothing about a flag/,
    ],
    ['a reason for nothing', { clip: 'tA', met: 'place', reason: 'x' }, /--reason goes with/],
    ['confirming what has no answer yet', { clip: 'tA', confirm: true }, /No answer yet for reps/],
  ])('say what to type instead for %s', (_, options, words) => {
    expect(() => decide(options)).toThrow(words);
  });
});

describe('lists and columns', () => {
  test('of decisions stop at the first line that is none', () => {
    const act = '{"kind":"clip-moved","clip":"x","squad":null}';
    expect(parseActs(`${act}\r\n\n${act}`)).toMatchObject({
      badLine: null,
      acts: [{ squad: null }, { squad: null }],
    });
    expect(parseActs(`${act}\n${act.slice(0, 9)}`)).toEqual({ acts: null, badLine: 2 });
    expect(parseActs('')).toEqual({ acts: [], badLine: null });
  });

  test('of a sheet may have heads with = and need a known field', () => {
    expect(parseColumns('Student ID=pupil, a=b=points')).toEqual([
      { head: 'Student ID', field: 'pupil' },
      { head: 'a=b', field: 'points' },
    ]);
    for (const bad of ['', 'Score', 'Score=grade', '=points', 'Id=pupil,'])
      expect(parseColumns(bad), bad).toBeNull();
  });
});

describe('tables', () => {
  test('are aligned by letters, without spaces at the end', () => {
    expect(
      formatTable(
        [
          ['a', 'Zoé', 'x'],
          ['bbb', 'b', ''],
        ],
        '  ',
      ),
    ).toBe('  a    Zoé  x\n  bbb  b\n');
  });

  test('keep the end of what is too long, and all of the last column', () => {
    const long = `${'x'.repeat(80)}.MOV`;
    const [line = ''] = formatTable([[long, long]]).split('\n');
    expect(line).toBe(`…${'x'.repeat(55)}.MOV  ${long}`);
  });

  test('show one line a row, whatever a file is called', () => {
    expect(formatTable([['a\nb', '\u001b[31mred', 'x\u202Ey']])).toBe('a\uFFFDb  \uFFFD[31mred  x\uFFFDy\n');
    expect(toOneLine('Zoé 🎬 名前')).toBe('Zoé 🎬 名前');
  });

  test('of nothing are nothing', () => expect(formatTable([])).toBe(''));
});
