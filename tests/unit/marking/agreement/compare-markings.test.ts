import { describe, expect, test } from 'vitest';
import { AGREEMENT, explainAgreement } from '../../../../renderer/text/english/agreement.ts';
import { compareMarkings } from '../../../../src-core/marking/agreement/compare-markings.ts';
import { getBlindDecisions, isSecondAct } from '../../../../src-core/marking/agreement/second-decisions.ts';
import { buildHarbourPlan, confirm, decide, UNDECIDED } from '../harbour.ts';

const plan = buildHarbourPlan();
const clips = [...'CDEFGAB'].map((station) => `clip-${station}`);
const all = clips.map((clip) => confirm(clip));

const compare = (second = decide(), first = decide(...all)) =>
  compareMarkings({ plan, first, second, clips });

const findOf = (comparison: ReturnType<typeof compare>, wanted: string) => {
  const found = comparison.subjects.find(
    ({ subject }) => (subject.of === 'clip-points' ? 'points' : subject.code) === wanted,
  );
  if (!found) throw new Error(`no ${wanted}`);
  return found;
};

describe('two markings', () => {
  test('agree in full where they say the same, and kappa is not defined where nobody said no', () => {
    const { agreement, subject } = findOf(compare(decide(...all)), 'reps');
    expect(agreement).toMatchObject({ pairs: 7, same: 7, share: 1, kappa: null, icc: null });
    expect(explainAgreement(subject, agreement)).toContain('kappa is not defined');
  });

  test('name the clips to talk about, most differences first, and the squads', () => {
    const second = decide(...all, confirm('clip-D', 'reps'), confirm('clip-A', 'reps', 'together'), {
      kind: 'squad-marked',
      squad: 'plum',
      criterion: 'team',
      points: 2,
    });
    const comparison = compare(second);
    expect(comparison.clips.map(({ clip, differing }) => [clip, differing.map(({ code }) => code)])).toEqual([
      ['clip-A', ['reps', 'together']],
      ['clip-D', ['reps']],
    ]);
    expect(comparison.squads).toEqual([{ squad: 'plum', code: 'team', first: 1, second: 2 }]);
  });

  test('have the kappa of their table: 5 both met, 1 both not, 1 seen differently', () => {
    const first = decide(...all, confirm('clip-A', 'reps'));
    const second = decide(...all, confirm('clip-A', 'reps'), confirm('clip-D', 'reps'));
    // By hand: p_o = 6/7, p_e = (6·5 + 1·2)/49 = 32/49, kappa = (42 − 32)/(49 − 32) = 10/17.
    expect(findOf(compare(second, first), 'reps').agreement.kappa).toBeCloseTo(10 / 17, 10);
  });

  test('compare decisions alone: what only the machine proposed is nobody’s marking', () => {
    const comparison = compare(decide(confirm('clip-C')));
    expect(findOf(comparison, 'place').agreement.pairs).toBe(1);
    expect(comparison.clipsByOneOnly).toBe(6);
    expect(findOf(compare(UNDECIDED), 'place').agreement).toMatchObject({
      pairs: 0,
      share: null,
      kappa: null,
    });
  });

  test('without a mark in common claim no agreement, and say how many are marked by one only', () => {
    const first = { ...decide(confirm('clip-C'), confirm('clip-D')), squadPoints: new Map() };
    const apart = compare(decide(confirm('clip-E')), first);
    expect(AGREEMENT.toTalkAbout(apart)).toBe(
      'No clip has been marked by both yet. 3 clips are marked by one only: go on marking.',
    );
    expect(AGREEMENT.oneOnly(apart)).toBeNull();
    const common = compare(decide(confirm('clip-C')), first);
    expect(AGREEMENT.toTalkAbout(common)).toContain('they agree');
    expect(AGREEMENT.oneOnly(common)).toContain('1 clip marked whole by one');
  });

  test('compare what a clip earns by the award, all or nothing', () => {
    const second = decide(...all, confirm('clip-A', 'reps'));
    const { agreement, subject } = findOf(compare(second), 'points');
    expect(agreement).toMatchObject({ pairs: 7, same: 6 });
    expect(explainAgreement(subject, agreement)).toContain('take this as a hint');
  });
});

describe('a second marker', () => {
  test('sees none of the first’s answers, notes, squad marks or changes, but all that is settled of the clips', () => {
    const first = decide(
      ...all,
      { kind: 'clip-noted', clip: 'clip-A', text: 'one stands still' },
      { kind: 'station-set', clip: 'clip-A', station: 'A' },
      {
        kind: 'points-overridden',
        of: { type: 'squad', squad: 'plum' },
        change: { type: 'by', points: 1 },
        reason: 'mats',
      },
    );
    const blind = getBlindDecisions(first, UNDECIDED);
    expect([blind.answers, blind.notes, blind.squadPoints, blind.overrides].map(({ size }) => size)).toEqual([
      0, 0, 0, 0,
    ]);
    expect(blind.stationOf).toEqual(first.stationOf);
  });

  test('may answer, note and mark squads, and nothing else', () => {
    expect(isSecondAct(confirm('clip-A'))).toBe(true);
    expect(isSecondAct({ kind: 'undone', target: 'x' })).toBe(true);
    expect(isSecondAct({ kind: 'station-set', clip: 'clip-A', station: 'A' })).toBe(false);
    expect(isSecondAct({ kind: 'flag-settled', flag: 'x', settled: 'kept', reason: null })).toBe(false);
  });
});
