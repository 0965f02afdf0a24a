import { describe, expect, test } from 'vitest';
import type { UnisonFinding, UnisonLane } from '../../../src-core/evidence/unison-finding.ts';
import { proposeExercise } from '../../../src-core/marking/propose-exercise.ts';
import { proposePlace } from '../../../src-core/marking/propose-place.ts';
import { proposeReps } from '../../../src-core/marking/propose-reps.ts';
import { proposeTogether } from '../../../src-core/marking/propose-together.ts';
import type { ClipAssignment } from '../../../src-core/matching/assignment.ts';

describe('full reps', () => {
  const confidence = 0.9;

  test('are met by the prescribed count and by more', () => {
    expect(proposeReps({ count: 12, confidence }, 10)).toEqual({
      met: true,
      confidence: 0.9,
      reason: { code: 'reps-counted', count: 12, prescribed: 10 },
    });
    expect(proposeReps({ count: 10, confidence }, 10).met).toBe(true);
  });

  test('are not met by fewer, or by none', () => {
    const short = proposeReps({ count: 6, confidence }, 10);
    expect(short).toMatchObject({ met: false, confidence: 0.9, reason: { code: 'reps-short' } });
    const none = proposeReps({ count: null, confidence }, 10);
    expect(none).toMatchObject({ met: false, reason: { code: 'no-reps-seen', prescribed: 10 } });
  });

  test('are less sure where one rep would turn the answer', () => {
    expect(proposeReps({ count: 9, confidence }, 10).confidence).toBeLessThan(0.6);
    expect(proposeReps({ count: 10, confidence }, 10).confidence).toBeLessThan(0.6);
  });
});

describe('the right exercise', () => {
  const usualSeconds = [1.5, 4] as const;
  const moving = (cycleSeconds: number) => ({ count: 8, cycleSeconds, confidence: 0.8 });

  test('is proposed by its tempo, more surely at its place', () => {
    const away = proposeExercise(moving(2), { usualSeconds, atPlace: null });
    const there = proposeExercise(moving(2), { usualSeconds, atPlace: true });
    expect(away).toMatchObject({ met: true, reason: { code: 'tempo-fits', cycleSeconds: 2 } });
    expect(there?.confidence).toBeGreaterThan(away?.confidence ?? 1);
  });

  test('is not denied for a half or a double of the movement', () => {
    expect(proposeExercise(moving(0.9), { usualSeconds, atPlace: null })?.met).toBe(true);
    expect(proposeExercise(moving(6), { usualSeconds, atPlace: null })?.met).toBe(true);
  });

  test('is denied for another tempo and for none', () => {
    const fast = proposeExercise(moving(0.4), { usualSeconds, atPlace: true });
    expect(fast).toMatchObject({ met: false, reason: { code: 'tempo-differs' } });
    const still = { count: null, cycleSeconds: null, confidence: 0.9 };
    expect(proposeExercise(still, { usualSeconds, atPlace: true })?.reason).toEqual({
      code: 'no-repetition',
    });
  });

  test('without a usual tempo leans on the place, and without that says nothing', () => {
    expect(proposeExercise(moving(2), { usualSeconds: null, atPlace: true })?.met).toBe(true);
    expect(proposeExercise(moving(2), { usualSeconds: null, atPlace: false })).toBeNull();
    expect(proposeExercise(moving(2), { usualSeconds: null, atPlace: null })).toBeNull();
  });
});

/** A lane with these lags rep by rep; the same one in each of ten unless they are told. */
const lane = (lags: number | readonly (number | null)[] = 0.02, fault: UnisonLane['fault'] = null) => {
  const repLagsSeconds = typeof lags === 'number' ? Array.from({ length: 10 }, () => lags) : lags;
  const done = repLagsSeconds.filter((lag) => lag !== null);
  const lagSeconds = done.reduce((sum, lag) => sum + lag, 0) / done.length;
  return {
    x: 0.5,
    lagSeconds,
    repLagsSeconds,
    reps: done.length,
    fault,
    steadiness: 0.9,
  };
};
const group = (change: Partial<UnisonFinding> = {}): UnisonFinding => ({
  ...{ score: 0.9, lanes: [lane(), lane(), lane()], missingLanes: 0, repCount: 10 },
  ...{ windows: [], alternating: false, reachSeconds: 0.35, together: true },
  ...change,
});

describe('done together', () => {
  test('is proposed with the largest lag', () => {
    const lanes = [lane(), lane(-0.12), lane()];
    expect(proposeTogether(group({ lanes }), 3)).toMatchObject({
      met: true,
      reason: { code: 'moves-together', lanes: 3, lagSeconds: -0.12 },
    });
  });

  test('is denied for one who is behind, by name of the place in the row', () => {
    const lanes = [lane(), lane(), lane(0.6, 'off-beat')];
    expect(proposeTogether(group({ lanes, together: false }), 3)).toMatchObject({
      met: false,
      reason: { code: 'lane-off-beat', lane: 3, lagSeconds: 0.6 },
    });
  });

  test('is denied with a lag beyond the tolerance, also where the whole clip’s lags cancel out', () => {
    const late = lane([0.5, -0.5, 0.45, -0.5, 0.5, -0.4, 0, 0, 0, 0], 'off-beat');
    const steady = lane(0.3);
    const { reason, confidence } = proposeTogether(group({ lanes: [steady, late], together: false }), 3);
    expect(reason).toMatchObject({ code: 'lane-off-beat', lane: 2 });
    expect(Math.abs('lagSeconds' in reason ? reason.lagSeconds : 0)).toBeGreaterThan(0.35);
    expect(confidence).toBeGreaterThan(0.6);
  });

  test('is denied for one who stops', () => {
    const stopped = lane([0.4, 0.4, 0.4, 0.4, 0.4, 0.4, null, null, null, null], 'misses-reps');
    expect(proposeTogether(group({ lanes: [lane(), stopped, lane()], together: false }), 3).reason).toEqual({
      ...{ code: 'lane-misses-reps', lane: 2, lanes: 3, reps: 6, of: 10 },
    });
  });

  test('names turns as turns', () => {
    const turns = proposeTogether(group({ alternating: true, together: false }), 3);
    expect(turns).toMatchObject({ met: false, reason: { code: 'alternates', lanes: 3 } });
  });

  test('is open where somebody is not seen', () => {
    const hidden = proposeTogether(group({ missingLanes: 1 }), 3);
    expect(hidden).toMatchObject({ met: false, reason: { code: 'lanes-unseen', missing: 1 } });
    expect(hidden.confidence).toBeLessThan(0.6);
  });

  test('is less sure where fewer are seen than the squad has, and says so', () => {
    const all = proposeTogether(group(), 3);
    const some = proposeTogether(group(), 4);
    expect(some).toMatchObject({ met: true, reason: { code: 'some-move-together', lanes: 3, of: 4 } });
    expect(some.confidence).toBeLessThan(all.confidence);
    // More lanes than pupils, or a squad that nobody is listed in: nothing to say.
    for (const pupils of [2, 0, null]) expect(proposeTogether(group(), pupils)).toEqual(all);
  });

  test('is less sure near the tolerance', () => {
    const near = proposeTogether(group({ lanes: [lane(), lane(0.3)] }), 3);
    expect(near.confidence).toBeLessThan(proposeTogether(group(), 3).confidence);
  });
});

describe('the right place by its look', () => {
  const assignment = (change: Partial<ClipAssignment>): ClipAssignment => ({
    ...{ clip: 'c1', role: 'counts', slot: 0, station: 'A', stationFrom: 'inferred', inOrder: true },
    ...change,
  });
  const lookAlike = { station: 'A', like: 'c9', scores: { A: 0.97, B: 0.03 } };
  const signs = { cardAtSeconds: null, lookAlike };

  test('names the clip that it resembles', () => {
    expect(proposePlace(assignment({}), 'A', signs)).toEqual({
      met: true,
      confidence: 0.97,
      reason: { code: 'looks-like-clip', station: 'A', like: 'c9' },
    });
  });

  test('speaks against a slot at another place', () => {
    const other = assignment({ station: null, stationFrom: null, role: 'unplaced' });
    expect(proposePlace(other, 'B', signs)).toMatchObject({
      met: false,
      reason: { code: 'looks-like-other', station: 'A', expected: 'B', like: 'c9' },
    });
  });

  test('is silent beside a card or the teacher’s word, and without a slot', () => {
    expect(proposePlace(assignment({ stationFrom: 'card' }), 'A', signs)?.reason.code).toBe(
      'card-shows-station',
    );
    expect(proposePlace(assignment({ slot: null }), null, signs)).toBeNull();
  });
});
