import { describe, expect, test } from 'vitest';
import type { Decisions } from '../../../src-core/marking/decisions.ts';
import type { JournalDecision } from '../../../src-core/marking/journal-event.ts';
import { type PupilScore, type SquadScore, scoreLesson } from '../../../src-core/marking/points.ts';
import { buildInput, buildPupil, decide } from './harbour.ts';

function scorePupil(change: { decisions: Decisions }): PupilScore {
  const [pupil] = scoreLesson(buildInput(change)).pupils;
  if (!pupil) throw new Error('the lesson has a pupil');
  return pupil;
}

function scoreSquad(change: { decisions: Decisions }): SquadScore {
  const [squad] = scoreLesson(buildInput(change)).squads;
  if (!squad) throw new Error('the lesson has a squad');
  return squad;
}

describe('an override', () => {
  const override = (
    of: 'pupil' | 'squad' | 'clip',
    change: { type: 'by' | 'to'; points: number } | null,
  ): JournalDecision => ({
    kind: 'points-overridden',
    of:
      of === 'pupil'
        ? { type: 'pupil', pupil: 'k-0412' }
        : of === 'squad'
          ? { type: 'squad', squad: 'plum' }
          : { type: 'clip', clip: 'clip-G' },
    change,
    reason: 'carried the mats back alone',
  });

  test('adds to a pupil and says why', () => {
    const score = scorePupil({ decisions: decide(override('pupil', { type: 'by', points: 1 })) });
    expect(score).toMatchObject({ sum: { points: 9, max: 11 }, percent: 82 });
    expect(score.sum?.parts.at(-1)).toEqual({
      code: 'override',
      of: 'pupil',
      slot: null,
      change: { type: 'by', points: 1 },
      reason: 'carried the mats back alone',
      points: 1,
    });
  });

  test('sets a squad’s sum for each of its pupils, late ones within their own maximum', () => {
    const decisions = decide(override('squad', { type: 'to', points: 10 }));
    const pupils = [buildPupil('k-1'), buildPupil('k-2', { attendance: 'late', arrived: '10:55' })];
    const { pupils: scores } = scoreLesson(buildInput({ decisions, pupils }));
    expect(scores.map(({ sum }) => sum?.points)).toEqual([10, 9]);
  });

  test('of a clip stands where the order rule gives nothing', () => {
    const { byRule } = scoreSquad({ decisions: decide(override('clip', { type: 'to', points: 1 })) });
    expect(Object.values(byRule).map(({ clipPoints }) => clipPoints)).toEqual([1, 4, 6, 6]);
  });

  test('never leads below nothing or above the maximum, and shows what it came to', () => {
    const more = scorePupil({ decisions: decide(override('pupil', { type: 'by', points: 99 })) });
    const less = scorePupil({ decisions: decide(override('pupil', { type: 'by', points: -99 })) });
    expect([more.sum?.points, less.sum?.points]).toEqual([11, 0]);
    expect(less.sum?.parts.at(-1)).toMatchObject({ points: -8, change: { type: 'by', points: -99 } });
  });

  test('taken back leaves no trace in the sum', () => {
    const decisions = decide(override('pupil', { type: 'by', points: 1 }), override('pupil', null));
    expect(scorePupil({ decisions }).sum?.points).toBe(8);
  });
});
