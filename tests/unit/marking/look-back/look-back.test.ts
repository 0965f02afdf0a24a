import { median as referenceMedian } from 'simple-statistics';
import { describe, expect, test } from 'vitest';
import { buildSeries, findMedian, getEnds } from '../../../../src-core/marking/look-back/build-series.ts';
import type { LessonSummary, SquadSummary } from '../../../../src-core/marking/look-back/lesson-summary.ts';
import { buildLookBack, listSections } from '../../../../src-core/marking/look-back/look-back.ts';

function squad(code: string, facts: Partial<SquadSummary> = {}): SquadSummary {
  return {
    code,
    name: code,
    pinnie: { name: `${code} pinnie`, colour: '#1F8A86' },
    makeUp: '0001',
    slots: 6,
    clips: 6,
    points: 3,
    max: 6,
    isConfirmed: true,
    answers: [],
    marks: [],
    flags: [],
    reps: { told: 0, toldByTeacher: 0, short: 0 },
    unison: [],
    ...facts,
  };
}

function lesson(
  date: string,
  squads: readonly SquadSummary[],
  facts: Partial<LessonSummary> = {},
): LessonSummary {
  return {
    lesson: {
      ...{ code: 'HARBOUR', title: 'Harbour circuit', school: 'Cobble Quay School', className: '9 Kelp' },
      ...{ date, period: 'p1', start: '09:00' },
    },
    criteria: [{ code: 'place', label: 'Right place' }],
    squadCriteria: [],
    clips: 12,
    unseen: 0,
    squads: [...squads],
    ...facts,
  };
}

function lookBack(lessons: readonly LessonSummary[]) {
  const [section] = listSections(lessons);
  if (!section) throw new Error('no section');
  return buildLookBack(section);
}

const place = (met: number, notMet: number, byMachine = 0) => ({
  criterion: 'place',
  metByTeacher: met,
  metByMachine: byMachine,
  notMetByTeacher: notMet,
  notMetByMachine: 0,
  open: 0,
});

describe('sections', () => {
  test('are a school’s classes, by number and not by letter, with their lessons oldest first', () => {
    const other = (className: string, date: string, start = '09:00') => {
      const one = lesson(date, [squad('teal')]);
      return { ...one, lesson: { ...one.lesson, className, start } };
    };
    const sections = listSections([
      other('10 Kelp', '2025-05-01'),
      other('9 Kelp', '2025-05-02', '11:00'),
      other('9 Kelp', '2025-05-02', '09:00'),
      other('9 Kelp', '2024-09-02'),
    ]);
    const told = sections.map(({ className, lessons }) => [
      className,
      lessons.map((one) => `${one.lesson.date} ${one.lesson.start}`),
    ]);
    expect(told).toEqual([
      ['9 Kelp', ['2024-09-02 09:00', '2025-05-02 09:00', '2025-05-02 11:00']],
      ['10 Kelp', ['2025-05-01 09:00']],
    ]);
  });

  test('have no lesson that was planned and not held', () => {
    expect(listSections([lesson('2025-05-01', [squad('teal', { clips: 0 })], { clips: 0 })])).toEqual([]);
  });
});

describe('a series', () => {
  test('gives the class’s share from all squads’ points, so that a squad with more to earn weighs more', () => {
    const { whole, squads } = lookBack([
      lesson('2025-05-01', [squad('teal', { points: 2, max: 2 }), squad('plum', { points: 2, max: 6 })]),
    ]);
    expect(whole.points.points).toEqual([{ value: 0.5, of: 8, isInk: true }]);
    expect(squads.map(({ points }) => points.last)).toEqual([1, 1 / 3]);
  });

  test('has a gap where a squad was not there, and none for the class', () => {
    const { whole, squads } = lookBack([
      lesson('2025-05-01', [squad('teal'), squad('plum')]),
      lesson('2025-05-08', [squad('teal')]),
    ]);
    expect(squads.map(({ code, points }) => [code, points.points.map(({ value }) => value)])).toEqual([
      ['teal', [0.5, 0.5]],
      ['plum', [0.5, null]],
    ]);
    expect(whole.points.points.map(({ value }) => value)).toEqual([0.5, 0.5]);
  });

  test('is pencil where the machine’s word counts and nobody has confirmed it', () => {
    const { whole } = lookBack([
      lesson('2025-05-01', [squad('teal', { answers: [place(4, 2)] })]),
      lesson('2025-05-08', [squad('teal', { answers: [place(2, 2, 1)], isConfirmed: false })]),
    ]);
    expect(whole.criteria[0]?.points).toEqual([
      { value: 4 / 6, of: 6, isInk: true },
      { value: 3 / 5, of: 5, isInk: false },
    ]);
    expect(whole.points.points.map(({ isInk }) => isInk)).toEqual([true, false]);
  });

  test('says nothing, and not nought, of clips that nobody judged', () => {
    const { whole } = lookBack([lesson('2025-05-01', [squad('teal')])]);
    for (const series of [whole.repsShort, whole.unison, whole.criteria[0]])
      expect(series?.points).toEqual([{ value: null, of: 0, isInk: expect.any(Boolean) }]);
  });

  test('counts flags by kind, whatever was answered', () => {
    const flags = [
      { code: 'missing', open: 1, kept: 1, cleared: 0 },
      { code: 'retake', open: 0, kept: 0, cleared: 2 },
    ];
    const { whole, flagKinds } = lookBack([
      lesson('2025-05-01', [squad('teal', { flags }), squad('plum')]),
      lesson('2025-05-08', [squad('teal'), squad('plum')]),
    ]);
    expect(whole.flags.points.map(({ value, isInk }) => [value, isInk])).toEqual([
      [4, false],
      [0, true],
    ]);
    expect(flagKinds.map(({ code, flags: of }) => [code, of.points.map(({ value }) => value)])).toEqual([
      ['missing', [2, 0]],
      ['retake', [2, 0]],
    ]);
  });

  test('has in front of and behind it the means of five lessons, of fewer where there are not ten', () => {
    expect([1, 2, 3, 9, 10, 180].map(getEnds)).toEqual([0, 1, 1, 4, 5, 5]);
    const of = (values: readonly (number | null)[]) =>
      buildSeries(values.map((value) => ({ value, of: 1, isInk: true })));
    expect(of([0.5])).toMatchObject({ early: null, late: null, last: 0.5 });
    expect(of([0, null, 1, 1, 1])).toMatchObject({ early: 0.5, late: 1, last: 1 });
  });

  test('takes the median as statistics books do', () => {
    for (const values of [[0.2], [0.9, 0.1], [0.5, 0.3, 0.8], [0.1, 0.9, 0.3, 0.4]])
      expect(findMedian(values)).toBeCloseTo(referenceMedian(values), 12);
    expect(findMedian([])).toBeNull();
  });
});

test('squads keep the plan’s order, whatever they earned, and a new make-up shows', () => {
  const { squads } = lookBack([
    lesson('2025-05-01', [squad('plum', { points: 0 }), squad('teal', { points: 6 })]),
    lesson('2025-05-08', [squad('plum'), squad('teal', { makeUp: 'beef' })]),
  ]);
  expect(squads.map(({ code, isNewlyMade }) => [code, isNewlyMade])).toEqual([
    ['plum', [false, false]],
    ['teal', [false, true]],
  ]);
});
