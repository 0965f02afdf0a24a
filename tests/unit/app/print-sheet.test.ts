import { describe, expect, test } from 'vitest';
import type { GradedLesson } from '../../../src-core/app/graded-lesson.ts';
import { draftPaper, parseSheetOrder } from '../../../src-core/app/print-sheet.ts';
import type { Pupil } from '../../../src-core/lesson/roster.ts';
import type { JournalDecision } from '../../../src-core/marking/journal-event.ts';
import type { GradePages, SquadGrades } from '../../../src-core/printing/grade-pages.ts';
import type { SheetOrder } from '../../../src-core/printing/sheet-order.ts';
import type { SlipPages } from '../../../src-core/printing/slip-pages.ts';
import { buildSmallPlan } from '../lesson/small-plan.ts';
import { CLEAN, grade, PUPILS } from './small-clips.ts';

const SHEET: SheetOrder = { kind: 'grade-sheet', paper: 'a4', isGrey: false, stills: 'shown' };

const confirmed = CLEAN.map(
  ({ id }): JournalDecision => ({ kind: 'clip-confirmed', clip: id, answers: { place: true, reps: true } }),
);

function draw(graded: GradedLesson, order: Partial<SheetOrder> = {}): GradePages {
  const { pages } = draftPaper(graded, { ...SHEET, ...order }, { evenWithOpenFlags: true });
  if (pages === null || !('classPage' in pages)) throw new Error('no grade sheet');
  return pages;
}

function getSquad(pages: GradePages, name: string): SquadGrades {
  const squad = pages.squads.find((page) => page.squad.name.text === name);
  if (!squad) throw new Error(`no page of ${name}`);
  return squad;
}

const buildPupils = (...changes: readonly Partial<Pupil>[]): Pupil[] =>
  changes.map((change, at) => ({ ...(PUPILS[0] as Pupil), id: `k-${at}`, ...change }));

/** Teal has filmed B before A. */
const swapped = CLEAN.map((clip) => (clip.id === 'tA' ? { ...clip, at: '09:20:00' } : clip));

describe('a grade sheet', () => {
  test('is refused while a flag is open, unless it is asked for all the same, and then says so on every page', () => {
    const graded = grade(CLEAN.slice(1), confirmed);
    expect(draftPaper(graded, SHEET, { evenWithOpenFlags: false })).toMatchObject({
      pages: null,
      problems: [{ code: 'hand-in-flags-open', openFlags: 1 }],
    });
    const pages = draw(graded);
    for (const { head } of [pages.classPage, ...pages.squads]) {
      expect(head.state).toMatchObject({ isFinal: false, openFlags: 1 });
    }
  });

  test('is final once every mark is confirmed, and not a squad’s mark before', () => {
    const marks = ['teal', 'plum'].map(
      (squad): JournalDecision => ({ kind: 'squad-marked', squad, criterion: 'care', points: 2 }),
    );
    expect(draw(grade(CLEAN, [...confirmed, ...marks])).classPage.head.state.isFinal).toBe(true);
    expect(draw(grade(CLEAN, confirmed)).classPage.head.state).toMatchObject({
      isFinal: false,
      squadMarks: 2,
    });
  });

  test('shows the route as filmed against the route expected, and what broke it', () => {
    const { walk, rows } = getSquad(draw(grade(swapped, confirmed)), 'Teal');
    expect(walk.expected.map(({ station }) => station)).toEqual(['A', 'B']);
    expect(walk.walked.map(({ station }) => station)).toEqual(['B', 'A']);
    expect(walk.walked.filter(({ isBroken }) => isBroken)).toHaveLength(1);
    expect(rows.filter(({ isBroken }) => isBroken).map(({ points }) => points)).toEqual([0]);
    expect(rows.filter(({ isBroken }) => !isBroken).map(({ points }) => points)).toEqual([1]);
  });

  test('has a line for a slot without a clip, and none of it in the walk', () => {
    const { walk, rows } = getSquad(draw(grade(CLEAN.slice(1), confirmed)), 'Teal');
    expect(rows.map(({ role, station, points }) => [role, station?.code, points])).toEqual([
      ['counts', 'B', 1],
      ['no-clip', 'A', 0],
    ]);
    expect(walk.expected.map(({ hasClip }) => hasClip)).toEqual([false, true]);
  });

  test('keeps a proposal in pencil and an answer in ink', () => {
    const { rows } = getSquad(
      draw(grade(CLEAN, [{ kind: 'criterion-marked', clip: 'tA', criterion: 'reps', met: false }])),
      'Teal',
    );
    expect(rows[0]?.answers).toEqual([
      { met: true, isInk: false },
      { met: false, isInk: true },
    ]);
    expect(rows.map(({ isInk }) => isInk)).toEqual([false, false]);
  });

  test('lists how each flag was settled, with the teacher’s reason', () => {
    const kept: JournalDecision = {
      kind: 'flag-settled',
      flag: 'missing:teal:0',
      settled: 'kept',
      reason: 'It rained.',
    };
    const { flags } = getSquad(draw(grade(CLEAN.slice(1), [kept])), 'Teal');
    expect(flags.map(({ flag, answer }) => [flag.code, answer])).toEqual([
      ['missing', { settled: 'kept', reason: 'It rained.' }],
    ]);
  });

  test('lists pupils as the roster does, whatever their points', () => {
    const pupils = buildPupils(
      { given: 'Low', squad: 'plum' },
      { given: 'High', squad: 'teal' },
      { given: 'Mid', squad: 'plum' },
    );
    const { classPage } = draw(grade(CLEAN, confirmed.slice(0, 2), buildSmallPlan(), pupils));
    expect(classPage.pupils.map(({ score }) => score.sum?.points)).toEqual([0, 2, 0]);
  });
});

describe('stills on a grade sheet', () => {
  const looks = (page: SquadGrades) =>
    page.rows.map(({ strip }) => (strip?.look === 'none' ? strip.why : strip?.look));
  const shy = (squad: string) =>
    buildPupils({ squad: 'teal' }, { squad: 'plum' }, { squad, stills: false, attendance: 'absent' });

  test.each(['shown', 'blurred'] as const)('are %s as asked, and none where they are left out', (stills) => {
    expect(looks(getSquad(draw(grade(CLEAN), { stills }), 'Teal'))).toEqual([stills, stills]);
    expect(looks(getSquad(draw(grade(CLEAN), { stills: 'left-out' }), 'Teal'))).toEqual(['asked', 'asked']);
  });

  test('are none of a squad with somebody on the do-not-film list, whatever is asked', () => {
    const pages = draw(grade(CLEAN, [], buildSmallPlan(), shy('teal')));
    expect([looks(getSquad(pages, 'Teal')), getSquad(pages, 'Teal').isOnList]).toEqual([
      ['list', 'list'],
      true,
    ]);
    expect([looks(getSquad(pages, 'Plum')), getSquad(pages, 'Plum').isOnList]).toEqual([
      ['shown', 'shown'],
      false,
    ]);
  });

  test('are none of a clip that lay in such a squad’s folder too', () => {
    const both = CLEAN.map((clip) =>
      clip.id === 'tA' ? { ...clip, paths: ['Plum/x.MOV', 'Teal/y.MOV'] } : clip,
    );
    const pages = draw(grade(both, [], buildSmallPlan(), shy('plum')));
    expect(looks(getSquad(pages, 'Teal'))).toEqual(['list', 'shown']);
  });

  test('that count nothing are a few, evenly spaced', () => {
    const [row] = getSquad(draw(grade(CLEAN)), 'Teal').rows;
    const stills = row?.strip && row.strip.look !== 'none' ? row.strip.stills : [];
    expect(stills.map(({ number, atSeconds }) => [number, atSeconds])).toEqual(
      [1.5, 3.5, 5.5, 7.5, 9.5, 11.5].map((at) => [null, at]),
    );
  });
});

describe('slips on paper', () => {
  function slip(pupils: readonly Pupil[], pupil: string | null = null): SlipPages {
    const { pages } = draftPaper(
      grade(CLEAN.slice(1), [], buildSmallPlan(), pupils),
      { ...SHEET, kind: 'pupil-slips' },
      { evenWithOpenFlags: false, pupil },
    );
    if (pages === null || 'classPage' in pages) throw new Error('no slips');
    return pages;
  }

  const pupils = buildPupils(
    { given: 'Bram', family: 'Reed', squad: 'plum' },
    { given: 'Odda', family: 'Quill', squad: 'teal' },
    { given: 'Bram', family: 'Marsh', squad: 'plum' },
    { given: 'Bram', family: 'Teasel', squad: 'teal' },
  );

  test('are never refused, lie squad by squad, and tell two of one name apart', () => {
    expect(slip(pupils).slips.map(({ squad, pupil }) => [squad.name.text, pupil?.text])).toEqual([
      ['Teal', 'Odda'],
      ['Teal', 'Bram'],
      ['Plum', 'Bram Reed'],
      ['Plum', 'Bram Marsh'],
    ]);
  });

  test('can be one pupil’s alone', () => {
    expect(slip(pupils, 'k-1').slips.map(({ pupil }) => pupil?.text)).toEqual(['Odda']);
  });
});

test('an order as typed names the part that makes no sense', () => {
  expect(parseSheetOrder('grade-sheet', {})).toEqual({ order: SHEET });
  expect(parseSheetOrder('grade-sheet', { paper: 'a5' })).toEqual({ wrong: 'paper' });
  expect(parseSheetOrder('grade-sheet', { stills: 'sharp' })).toEqual({ wrong: 'stills' });
});
