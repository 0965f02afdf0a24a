import { describe, expect, test } from 'vitest';
import type { JournalDecision } from '../../../src-core/marking/journal-event.ts';
import { type PupilScore, scoreLesson } from '../../../src-core/marking/points.ts';
import type { ScoreInput } from '../../../src-core/marking/score-input.ts';
import {
  buildHarbourPlan,
  buildInput,
  buildPupil,
  confirm,
  decide,
  G_FLAG,
  PLUM_SLOTS,
  UNDECIDED,
} from './harbour.ts';

// The figures are those of the demo's own score sheet for Plum: 8 of 11, Junip 6 of 9, Tove 9 of 11.

function scorePupil(change: Partial<ScoreInput> = {}): PupilScore {
  const [pupil] = scoreLesson(buildInput(change)).pupils;
  if (!pupil) throw new Error('the lesson has a pupil');
  return pupil;
}

function scoreSquad(change: Partial<ScoreInput> = {}) {
  const [squad] = scoreLesson(buildInput(change)).squads;
  if (!squad) throw new Error('the lesson has a squad');
  return squad;
}

const allInked: readonly JournalDecision[] = [...'CDEFGB']
  .map((station) => confirm(`clip-${station}`))
  .concat(confirm('clip-A', 'together'));

describe('points of a squad', () => {
  test('one point a clip that meets every criterion, none for the clip out of order, and the squad criteria', () => {
    const { sum, percent, scale } = scoreSquad();
    expect(sum).toMatchObject({ points: 8, clipPoints: 5, max: 11 });
    expect([percent, scale]).toEqual([73, '3']);
  });

  test('every order rule is shown with what it would give', () => {
    const { byRule } = scoreSquad();
    expect(Object.entries(byRule).map(([rule, { clipPoints }]) => [rule, clipPoints])).toEqual([
      ['void-route', 0],
      ['void-after', 3],
      ['void-clip', 5],
      ['report', 6],
    ]);
  });

  test('the plan chooses the rule', () => {
    expect(scoreSquad({ plan: buildHarbourPlan({ orderRule: 'void-after' }) }).sum.points).toBe(6);
  });

  test('a flag for order that the teacher cleared costs nothing under any rule', () => {
    const decisions = decide({ kind: 'flag-settled', flag: G_FLAG, settled: 'cleared', reason: null });
    const { byRule, firstBreak } = scoreSquad({ decisions });
    expect(firstBreak).toBeNull();
    expect(new Set(Object.values(byRule).map(({ clipPoints }) => clipPoints))).toEqual(new Set([6]));
  });

  test('a flag for order that the teacher kept costs as before', () => {
    const decisions = decide({ kind: 'flag-settled', flag: G_FLAG, settled: 'kept', reason: null });
    expect(scoreSquad({ decisions }).sum.points).toBe(8);
  });

  test('by weight, each criterion met earns its own points', () => {
    const plan = buildHarbourPlan();
    const sum = { ...plan, rubric: { ...plan.rubric, award: { rule: 'sum' as const } } };
    const score = scoreSquad({ plan: sum });
    expect(score.sum).toMatchObject({ clipPoints: 4 * 5 + 3, max: 7 * 4 + 4 });
  });

  test('squad criteria that nobody has marked earn nothing', () => {
    expect(scoreSquad({ decisions: UNDECIDED }).sum.points).toBe(5);
  });

  test('points for a squad criterion never pass its maximum', () => {
    const decisions = decide({ kind: 'squad-marked', squad: 'plum', criterion: 'care', points: 50 });
    expect(scoreSquad({ decisions }).sum.points).toBe(8);
  });
});

describe('one criterion of a clip', () => {
  const findMark = (decisions = decide()) =>
    scoreSquad({ decisions }).slots[5]?.clip?.criteria.find(({ criterion }) => criterion === 'together');

  test('shows the proposal as long as the teacher has not spoken, and it is not confirmed', () => {
    expect(findMark()).toMatchObject({
      proposed: { met: false },
      decided: null,
      shown: false,
      confirmed: false,
    });
  });

  test('shows the teacher’s word over the proposal, which stays visible beside it', () => {
    const decisions = decide({ kind: 'criterion-marked', clip: 'clip-A', criterion: 'together', met: true });
    expect(findMark(decisions)).toMatchObject({
      proposed: { met: false },
      decided: true,
      shown: true,
      confirmed: true,
    });
  });

  test('that is neither proposed nor decided earns nothing and is not confirmed', () => {
    const { sum, slots } = scoreSquad({ proposals: new Map() });
    expect(sum.clipPoints).toBe(0);
    expect(slots[0]?.clip?.criteria[0]).toMatchObject({ proposed: null, shown: null, confirmed: false });
  });

  test('confirming a clip makes every answer shown the teacher’s, and later evidence changes nothing', () => {
    const decisions = decide(confirm('clip-A', 'together'));
    expect(scoreSquad({ decisions, proposals: new Map() }).slots[5]?.clip).toMatchObject({
      confirmed: true,
      earned: 0,
    });
  });
});

describe('how a slot is drawn', () => {
  const states = (change: Partial<ScoreInput>) => scoreSquad(change).slots.map(({ state }) => state);

  test('pencilled until confirmed, inked after', () => {
    expect(states({ flags: [], decisions: decide(confirm('clip-C')) })).toEqual([
      'inked',
      ...Array(6).fill('pencilled'),
    ]);
  });

  test('flagged by a flag on its clip that is filed under another squad', () => {
    const flags = [{ key: 'handed-in-twice:clip-C', squad: 'moss', clip: 'clip-C', slot: null }];
    expect(states({ flags, decisions: decide(confirm('clip-C')) })[0]).toBe('flagged');
    expect(scoreSquad({ flags }).openFlags).toEqual(flags);
  });

  test('flagged while a flag on its clip is open, even when confirmed', () => {
    expect(states({ decisions: decide(confirm('clip-G')) })[4]).toBe('flagged');
  });

  test('without a clip, whether its missing clip is settled or not', () => {
    const slots = PLUM_SLOTS.map((slot) =>
      slot.slot === 0 ? { ...slot, clip: null, startMs: null, position: null } : slot,
    );
    const flags = [{ key: 'missing:plum:0', squad: 'plum', clip: null, slot: 0 }];
    expect(states({ squads: [{ squad: 'plum', slots }], flags })[0]).toBe('no-clip');
  });
});

describe('points of a pupil', () => {
  test('who was there are the squad’s', () => {
    expect(scorePupil()).toMatchObject({ sum: { points: 8, max: 11 }, percent: 73, scale: '3' });
  });

  test('who came late count only the slots from then on, and the maximum shrinks with them', () => {
    const late = buildPupil('k-0414', { attendance: 'late', arrived: '10:55' });
    const score = scorePupil({ pupils: [late] });
    expect(score.slots).toEqual([2, 3, 4, 5, 6]);
    expect(score).toMatchObject({ sum: { points: 6, clipPoints: 3, max: 9 }, percent: 67, scale: '2' });
  });

  test('who came after the break do not lose for it', () => {
    const late = buildPupil('k-0414', { attendance: 'late', arrived: '11:10' });
    const score = scorePupil({ pupils: [late], plan: buildHarbourPlan({ orderRule: 'void-route' }) });
    expect(score.slots).toEqual([5, 6]);
    expect(score.sum?.clipPoints).toBe(1);
  });

  test('who were absent have no mark, whatever the squad earned', () => {
    const score = scorePupil({ pupils: [buildPupil('k-0415', { attendance: 'absent' })] });
    expect(score).toMatchObject({ state: 'absent', sum: null, percent: null, scale: null });
  });

  test('who were excused have an excused entry and no number', () => {
    const score = scorePupil({ pupils: [buildPupil('k-0416', { attendance: 'excused' })] });
    expect(score).toMatchObject({ state: 'excused', sum: null, percent: null, scale: null });
  });

  test('follow the teacher’s word on attendance over the roster', () => {
    const decisions = decide({
      kind: 'attendance-set',
      pupil: 'k-0412',
      attendance: 'late',
      arrived: '10:55',
    });
    expect(scorePupil({ decisions }).sum).toMatchObject({ points: 6, max: 9 });
  });

  test('whose squad the plan does not know have no mark and are not confirmed', () => {
    const score = scorePupil({ pupils: [buildPupil('k-1', { squad: 'navy' })] });
    expect(score).toMatchObject({ state: 'unconfirmed', sum: null });
  });
});

describe('a mark is confirmed', () => {
  const settled: JournalDecision = { kind: 'flag-settled', flag: G_FLAG, settled: 'kept', reason: null };

  test('when every answer is the teacher’s and every flag of the squad is settled', () => {
    expect(scorePupil({ decisions: decide(...allInked, settled) })).toMatchObject({
      state: 'confirmed',
      unconfirmed: 0,
      openFlags: 0,
    });
  });

  test('not while one answer is the machine’s', () => {
    const decisions = decide(...allInked.slice(1), settled);
    expect(scorePupil({ decisions })).toMatchObject({ state: 'unconfirmed', unconfirmed: 4 });
  });

  test('not while a flag of the squad is open', () => {
    expect(scorePupil({ decisions: decide(...allInked) })).toMatchObject({
      state: 'unconfirmed',
      unconfirmed: 0,
      openFlags: 1,
    });
  });

  test('not while a squad criterion waits', () => {
    const decisions = decide(...allInked, settled, {
      kind: 'squad-marked',
      squad: 'plum',
      criterion: 'care',
      points: null,
    });
    expect(scorePupil({ decisions })).toMatchObject({ state: 'unconfirmed', unconfirmed: 1 });
  });

  test('for a late pupil too when only clips from before their time are open', () => {
    const late = buildPupil('k-0414', { attendance: 'late', arrived: '11:10' });
    const decisions = decide(confirm('clip-A'), confirm('clip-B'), settled);
    expect(scorePupil({ pupils: [late], decisions }).state).toBe('confirmed');
  });
});

describe('a sum explains itself', () => {
  test('slot by slot, with what was lost to order and which criterion was not met', () => {
    const late = buildPupil('k-0414', { attendance: 'late', arrived: '10:55' });
    const parts = scorePupil({ pupils: [late] }).sum?.parts ?? [];
    expect(
      parts.map((part) => (part.code === 'slot' ? [part.station, part.points, part.reason] : part.points)),
    ).toEqual([
      ['E', 1, 'earned'],
      ['F', 1, 'earned'],
      ['G', 0, 'order'],
      ['A', 0, 'criteria'],
      ['B', 1, 'earned'],
      2,
      1,
    ]);
    expect(parts[3]).toMatchObject({ unmet: ['together'], confirmed: false });
  });

  test('a slot without a clip says so', () => {
    const slots = PLUM_SLOTS.map((slot) =>
      slot.slot === 6 ? { ...slot, clip: null, startMs: null, position: null } : slot,
    );
    expect(scoreSquad({ squads: [{ squad: 'plum', slots }] }).sum.parts[6]).toMatchObject({
      station: 'B',
      clip: null,
      points: 0,
      reason: 'no-clip',
    });
  });
});
