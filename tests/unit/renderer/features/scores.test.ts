import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { countBefore } from '../../../../renderer/features/hand-in/counts.ts';
import {
  buildForm,
  listDecisions,
  listMissing,
  takeBack,
} from '../../../../renderer/features/scores/adjustment.ts';
import { describePupil } from '../../../../renderer/features/scores/describe-pupil.ts';
import {
  buildScoreTable,
  countPencilled,
  listBroken,
} from '../../../../renderer/features/scores/score-table.ts';
import { findSelected, type Selected } from '../../../../renderer/features/scores/selection.ts';
import { explainPupil, explainSquad } from '../../../../renderer/features/scores/sum-lines.ts';
import { showPending } from '../../../../renderer/storage/show-pending.ts';
import type { LessonView } from '../../../../src-core/contract/lesson-view.ts';
import type { JournalAct } from '../../../../src-core/marking/journal-event.ts';
import { openDeskForWindows } from '../storage/open-windows.ts';
import { buildFlag } from '../walked-lesson.ts';

let desk: Awaited<ReturnType<typeof openDeskForWindows>>;
let lesson: LessonView;

beforeAll(async () => {
  desk = await openDeskForWindows();
  const session = await desk.getDesk().lessons.find(desk.lesson);
  if (!session) throw new Error('the lesson is open');
  lesson = session.getView();
});

afterAll(() => desk.close());

const decided = (...acts: readonly JournalAct[]): LessonView =>
  showPending(
    lesson,
    acts.map((act, at) => ({ id: String(at), lesson: lesson.lesson, who: 't', act, acked: null })),
  );

function selectPupil(view: LessonView, pupil: string): Extract<Selected, { kind: 'pupil' }> {
  const selected = findSelected(buildScoreTable(view), { kind: 'pupil', pupil });
  if (selected?.kind !== 'pupil') throw new Error('the pupil is there');
  return selected;
}

const late: JournalAct = { kind: 'attendance-set', pupil: 'k-1', attendance: 'late', arrived: '10:01' };
const tealClips = () => lesson.clips.filter(({ squad }) => squad === 'teal');
const confirmTeal = () =>
  tealClips().map(
    ({ id }): JournalAct => ({
      kind: 'clip-confirmed',
      clip: id,
      answers: { place: true, together: true },
    }),
  );

describe('the table of scores', () => {
  test('has a box for each slot, open ones among them', () => {
    const [teal] = buildScoreTable(lesson);
    expect(teal?.boxes.map(({ station, result, state }) => [station, result, state])).toEqual([
      ['A', 'open', 'pencilled'],
      ['B', 'open', 'pencilled'],
      ['C', 'open', 'pencilled'],
    ]);
    expect(countPencilled(buildScoreTable(lesson))).toBe(6);
  });

  test('inks boxes with the clips', () => {
    const rows = buildScoreTable(decided(...confirmTeal()));
    expect(rows[0]?.boxes.every(({ state, result }) => state === 'inked' && result === 'earned')).toBe(true);
    expect(rows[0]?.clipPoints).toBe(3);
    expect(countPencilled(rows)).toBe(3);
  });

  test('has a flag on the box of its clip, whichever squad it is filed under', () => {
    const [clip] = tealClips();
    if (!clip) throw new Error('teal has clips');
    const flag = buildFlag({ code: 'handed-in-twice', clip: clip.id, squad: 'amber', alsoIn: ['teal'] });
    const boxes = buildScoreTable({ ...lesson, flags: [flag] }).flatMap((row) => row.boxes);
    expect(boxes.filter(({ state }) => state === 'flagged')).toEqual([
      expect.objectContaining({ clip: clip.id, flag: 'handed-in-twice' }),
    ]);
  });

  test('has a flag without a clip on its squad’s slot alone', () => {
    const flag = buildFlag({
      code: 'missing',
      clip: null,
      squad: 'teal',
      slot: 1,
      station: 'B',
      candidates: [],
    });
    const rows = buildScoreTable({ ...lesson, flags: [flag] });
    const flagged = rows.flatMap((row) => row.boxes.map((box) => [row.squad, box.slot, box.state]));
    expect(flagged.filter(([, , state]) => state === 'flagged')).toEqual([['teal', 1, 'flagged']]);
  });

  test('inks a sum only once everything behind it is inked', () => {
    const care: JournalAct = { kind: 'squad-marked', squad: 'teal', criterion: 'care', points: 2 };
    const inked = (...acts: readonly JournalAct[]) => {
      const [teal] = buildScoreTable(decided(...acts));
      return [teal?.areClipsInked, teal?.isInked];
    };
    expect(inked()).toEqual([false, false]);
    expect(inked(care)).toEqual([false, false]);
    expect(inked(...confirmTeal())).toEqual([true, false]);
    expect(inked(...confirmTeal(), care)).toEqual([true, true]);
  });

  test('names no squad as broken where all are in order', () => {
    expect(listBroken(buildScoreTable(lesson))).toEqual([]);
  });
});

describe('an explained sum', () => {
  test('adds up to the sum, line by line', () => {
    const view = decided(...confirmTeal(), {
      kind: 'points-overridden',
      of: { type: 'squad', squad: 'teal' },
      change: { type: 'by', points: -1 },
      reason: 'left the mats out',
    });
    const score = view.squadScores[0];
    if (!score) throw new Error('a squad');
    const lines = explainSquad(view.plan, score);
    expect(lines.map(({ words }) => words)).toEqual([
      'A, B and C in full',
      'Care: not given yet (of 2)',
      '−1 for the squad by hand: left the mats out',
    ]);
    expect(lines.reduce((sum, { points }) => sum + (points ?? 0), 0)).toBe(score.sum.points);
  });

  test('says pencilled of what is proposed, and never of what nobody has answered', () => {
    const lines = (view: LessonView) => {
      const [teal] = view.squadScores;
      return teal ? explainSquad(view.plan, teal).map(({ words, isPencilled }) => [words, isPencilled]) : [];
    };
    expect(lines(lesson)).toEqual([
      ['A: together not answered', false],
      ['B: together not answered', false],
      ['C: together not answered', false],
      ['Care: not given yet (of 2)', false],
    ]);
    const [clip] = tealClips();
    if (!clip) throw new Error('teal has clips');
    const answer = (criterion: string, met: boolean): JournalAct => ({
      kind: 'criterion-marked',
      clip: clip.id,
      criterion,
      met,
    });
    expect(lines(decided(answer('together', true)))[0]).toEqual(['A in full', true]);
    expect(lines(decided(answer('together', false)))[0]).toEqual(['A: not together', true]);
    expect(lines(decided(answer('place', false)))[0]).toEqual([
      'A: not right place; together not answered',
      false,
    ]);
  });

  test('says first what counts for a late pupil', () => {
    const { score } = selectPupil(decided(...confirmTeal(), late), 'k-1');
    const [first] = explainPupil(lesson.plan, score);
    expect(first?.words).toBe('Came at 10:01, so slots 2 to 3');
    expect(describePupil(score)).toEqual(['late, came at 10:01: slots 2 to 3 count']);
  });

  test('has no line for an absent pupil', () => {
    const view = decided({ kind: 'attendance-set', pupil: 'k-1', attendance: 'absent', arrived: null });
    const { score } = selectPupil(view, 'k-1');
    expect(explainPupil(view.plan, score)).toEqual([]);
    expect(describePupil(score)).toEqual(['absent: no mark']);
  });
});

describe('an adjustment', () => {
  test('decides nothing where nothing was changed', () => {
    const selected = selectPupil(lesson, 'k-1');
    expect(listDecisions(selected, buildForm(selected))).toEqual([]);
  });

  test('of points needs a reason and a number', () => {
    const form = buildForm(selectPupil(lesson, 'k-1'));
    expect(listMissing({ ...form, amount: '+1' })).toEqual(['reason']);
    expect(listMissing({ ...form, amount: 'one', reason: 'x' })).toEqual(['amount']);
    expect(listMissing({ ...form, type: 'to', amount: '-1', reason: 'x' })).toEqual(['amount']);
    expect(listMissing({ ...form, amount: '−1', reason: 'x' })).toEqual([]);
  });

  test('sets attendance and points as two decisions', () => {
    const selected = selectPupil(lesson, 'k-1');
    const form = {
      ...buildForm(selected),
      attendance: 'late' as const,
      arrived: '9:58',
      amount: '1,5',
      reason: ' carried the mats ',
    };
    expect(listDecisions(selected, form)).toEqual([
      { kind: 'attendance-set', pupil: 'k-1', attendance: 'late', arrived: '09:58' },
      {
        kind: 'points-overridden',
        of: { type: 'pupil', pupil: 'k-1' },
        change: { type: 'by', points: 1.5 },
        reason: 'carried the mats',
      },
    ]);
  });

  test('is taken back with its reason', () => {
    const selected = findSelected(buildScoreTable(lesson), { kind: 'squad', squad: 'teal' });
    if (!selected) throw new Error('teal is there');
    expect(takeBack(selected, tealClips()[0]?.id ?? '', 'x')).toMatchObject({
      of: { type: 'clip' },
      change: null,
    });
  });
});

describe('what is counted before handing in', () => {
  test('tells what waits for whom', () => {
    const counts = {
      slots: { inked: 3, pencilled: 3, flagged: 0, 'no-clip': 0 },
      pupils: { confirmed: 0, unconfirmed: 2, absent: 0, excused: 0 },
      openFlags: 0,
    };
    const view = decided(...confirmTeal());
    expect(countBefore(view, { counts, problems: [], isFinal: false })).toMatchObject({
      waiting: 3,
      pointsMissing: 2,
      slots: 6,
    });
  });
});
