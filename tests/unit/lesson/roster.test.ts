import { describe, expect, test } from 'vitest';
import { parseRoster } from '../../../src-core/lesson/roster.ts';
import { buildSmallPlan } from './small-plan.ts';

const plan = buildSmallPlan();
const HEAD = 'id,given,family,squad,attendance,arrived,stills';
/** The lesson's period. */
const BELL = { from: '09:00', to: '09:45' };
const read = (...lines: string[]) => parseRoster([HEAD, ...lines].join('\r\n'), plan);

describe('the roster', () => {
  test('is read whole, squads by any of their names', () => {
    const { pupils, problems } = read(
      'k-1,Odda,Quillfeather,Plum,,,',
      'k-2,Bram,Thistlewick,tablet 1,late,9:05,no',
    );
    expect(problems).toEqual([]);
    expect(pupils).toEqual([
      {
        id: 'k-1',
        given: 'Odda',
        family: 'Quillfeather',
        squad: 'plum',
        attendance: 'present',
        arrived: null,
        stills: true,
      },
      {
        id: 'k-2',
        given: 'Bram',
        family: 'Thistlewick',
        squad: 'teal',
        attendance: 'late',
        arrived: '09:05',
        stills: false,
      },
    ]);
  });

  test('may come from a spreadsheet: byte-order mark, other column order, further columns, quotes, blank lines', () => {
    const text = '\uFEFFSquad,Family,Given,ID,House\n\nteal,"O\'Kelp, the elder",Ansa,=4,Red\n';
    const { pupils, problems } = parseRoster(text, plan);
    expect(problems).toEqual([]);
    expect(pupils).toMatchObject([{ id: '=4', family: "O'Kelp, the elder", squad: 'teal' }]);
  });

  test('keeps every pupil where two squads wear each other’s colour', () => {
    const swapped = buildSmallPlan(({ squads: [teal, plum] }) => {
      if (teal && plum) [teal.pinnie, plum.pinnie] = [plum.pinnie, teal.pinnie];
    });
    const text = 'id,given,family,squad\nk-1,Odda,Quillfeather,teal\nk-2,Bram,Thistlewick,plum\n';
    const { pupils, problems } = parseRoster(text, swapped);
    expect(problems).toEqual([]);
    expect(pupils.map(({ squad }) => squad)).toEqual(['teal', 'plum']);
    // A name that both go by, and that is no code, still means neither.
    expect(parseRoster(text.replace('teal', 'Team Teal'), swapped).pupils).toHaveLength(1);
  });

  test('without a needed column is refused, naming it', () => {
    expect(parseRoster('id,given,squad\n1,A,teal', plan)).toEqual({
      pupils: [],
      unshown: ['teal', 'plum'],
      problems: [{ code: 'roster-column-missing', column: 'family' }],
    });
  });

  test.each([
    ['k-1,Odda,Quill,jade,,,', { code: 'roster-squad-unknown', line: 2, squad: 'jade' }, 0],
    ['k-1,,Quill,teal,,,', { code: 'roster-field-empty', line: 2, column: 'given' }, 0],
    ['k-1,Odda,Quill,teal,ill,,', { code: 'roster-attendance-unknown', line: 2, value: 'ill' }, 1],
    ['k-1,Odda,Quill,teal,late,,', { code: 'roster-arrival-missing', line: 2 }, 1],
    ['k-1,Odda,Quill,teal,late,soon,', { code: 'roster-arrival-invalid', line: 2, value: 'soon' }, 1],
    [
      'k-1,Odda,Quill,teal,late,23:00,',
      { code: 'roster-arrival-outside', line: 2, value: '23:00', ...BELL },
      1,
    ],
    ['k-1,"Odda,Quill,teal,,,\nk-2,Bram,Thistle,plum,,,no', { code: 'roster-quote-open', line: 2 }, 0],
    ['k-1,Odda,Quill,teal,,,perhaps', { code: 'roster-stills-unknown', line: 2, value: 'perhaps' }, 1],
    ['k-1,Odda,Quill,teal', { code: 'roster-line-uneven', line: 2 }, 1],
  ])('names the slip in “%s”', (line, problem, pupilsLeft) => {
    const { pupils, problems } = read(line);
    expect(problems).toEqual([problem]);
    expect(pupils).toHaveLength(pupilsLeft);
  });

  test('takes no pupil twice', () => {
    const { pupils, problems } = read('k-1,Odda,Quill,teal,,,', 'k-1,Bram,Thistle,teal,,,');
    expect(pupils).toHaveLength(1);
    expect(problems).toEqual([{ code: 'roster-id-twice', line: 3, id: 'k-1', firstLine: 2 }]);
  });

  test('on an unclear word about stills allows none', () => {
    expect(read('k-1,Odda,Quill,teal,,,perhaps').pupils[0]?.stills).toBe(false);
  });

  test.each([
    ['stands in the class', 'k-1,Odda,Quill,teal,absent,,no,,', ['teal']],
    ['has no consent', 'k-1,Odda,Quill,teal,,,yes,no,', ['teal']],
    ['has left it since', 'k-1,Odda,Quill,teal,,,no,,yes', ['teal']],
    ['stands there twice', 'k-1,Odda,Quill,plum,,,,,\nk-1,Odda,Quill,teal,,,no,,', ['teal']],
    ['is of nobody knows which squad', 'k-1,Odda,Quill,jade,,,no,,', ['teal', 'plum']],
    ['may be shown', 'k-1,Odda,Quill,teal,,,yes,yes,', []],
  ])('has no still shown of whoever is in a picture with a pupil who %s', (_, lines, unshown) => {
    expect(parseRoster(`${HEAD},consent,left\n${lines}`, plan).unshown).toEqual(unshown);
  });
});
