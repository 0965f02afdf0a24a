import { describe, expect, test } from 'vitest';
import { SLIP, sayNext, sayWell, writeSlip } from '../../../renderer/text/english/slips.ts';
import { scoreLesson } from '../../../src-core/marking/points.ts';
import type { ScoreInput } from '../../../src-core/marking/score-input.ts';
import { buildPupilSlips, buildSquadSlips, type SlipInput } from '../../../src-core/printing/slip.ts';
import {
  buildHarbourPlan,
  buildInput,
  buildPupil,
  confirm,
  decide,
  G_FLAG,
  PLUM_SLOTS,
} from '../marking/harbour.ts';
import { countText, getGrade } from './readability.ts';

const PLACES = [
  'Rope Store',
  'Tide Post',
  'Gull Wall',
  'Crane Square',
  'Buoy Yard',
  'Slip Bench',
  'Net Loft',
];

const plan = buildHarbourPlan({
  stations: [...'ABCDEFG'].map((code, at) => ({ code, place: PLACES[at], exercise: 'Hops', reps: 10 })),
});

const pupils = [
  buildPupil('k-0412'),
  buildPupil('k-0414', { given: 'Junip', family: 'Sandlark', attendance: 'late', arrived: '10:55' }),
  buildPupil('k-0415', { given: 'Milo', family: 'Fogbottom', attendance: 'absent' }),
  buildPupil('k-0416', { given: 'Ansa', family: 'Kelpington', attendance: 'excused' }),
];

const kept = { kind: 'flag-settled', flag: G_FLAG, settled: 'kept', reason: null } as const;
const inked = [...'CDEFGAB'].map((station) => confirm(`clip-${station}`));

function buildSlipInput(change: Partial<ScoreInput> = {}, allowed: readonly number[] = []): SlipInput {
  const decisions = decide(...inked, kept);
  return {
    plan,
    score: scoreLesson(buildInput({ plan, pupils, decisions, ...change })),
    allowedGaps: new Map([['plum', new Set(allowed)]]),
  };
}

const squadSlip = (...of: Parameters<typeof buildSlipInput>) => {
  const [slip] = buildSquadSlips(buildSlipInput(...of));
  if (!slip) throw new Error('no slip');
  return slip;
};

const withoutClip = (station: string) =>
  PLUM_SLOTS.map((slot) =>
    slot.station === station ? { ...slot, clip: null, startMs: null, position: null, orderFlag: null } : slot,
  );

describe('a squad’s slip', () => {
  test('tells what went well and what is next from what the teacher has confirmed', () => {
    const slip = squadSlip({
      decisions: decide(...inked, kept, confirm('clip-A', 'together'), confirm('clip-D', 'together')),
    });
    expect(slip.well).toEqual([
      { code: 'all-met', stations: ['C', 'E', 'F', 'G', 'B'] },
      { code: 'always-met', criterion: 'place' },
      { code: 'always-met', criterion: 'exercise' },
    ]);
    expect(slip.next).toEqual([
      { code: 'not-met', criterion: 'together', stations: ['D', 'A'] },
      { code: 'out-of-order', stations: ['G'] },
    ]);
  });

  test('names the places, not each time, until every clip that counts is confirmed', () => {
    const some = squadSlip({ decisions: decide(confirm('clip-D', 'exercise'), kept) });
    expect([some.confirmed, some.waiting]).toEqual([1, 6]);
    expect(some.well.slice(0, 2)).toEqual([
      { code: 'met-at', criterion: 'place', stations: ['D'] },
      { code: 'met-at', criterion: 'reps', stations: ['D'] },
    ]);
    expect(writeSlip(plan, some)).toContain('At Crane Square you did the full count.');
    expect(writeSlip(plan, some)).not.toContain('each time');
    const allButOne = decide(...inked.slice(1), kept, confirm('clip-D', 'together'));
    expect(squadSlip({ decisions: allButOne }).well.map(({ code }) => code)).not.toContain('always-met');
  });

  test('says nothing about what the machine only proposes, and that something is waiting', () => {
    const slip = squadSlip({ decisions: decide(kept) });
    expect([
      slip.well.filter(({ code }) => code !== 'squad-full'),
      slip.next.map(({ code }) => code),
    ]).toEqual([[], ['squad-more']]);
    expect(slip.waiting).toBe(7);
    expect(writeSlip(plan, slip)).toContain(SLIP.waiting);
  });

  test('asks for a film that is missing, unless the flag is open or the teacher let it pass', () => {
    const squads = [{ squad: 'plum', slots: withoutClip('B') }];
    expect(squadSlip({ squads }).next).toContainEqual({ code: 'no-clip', stations: ['B'] });
    expect(squadSlip({ squads }, [6]).next.map(({ code }) => code)).not.toContain('no-clip');
    const open = [{ key: 'missing:plum:6', squad: 'plum', clip: null, slot: 6 }];
    const slip = squadSlip({ squads, flags: open });
    expect(slip.next.map(({ code }) => code)).not.toContain('no-clip');
    expect(slip.waiting).toBe(1);
  });

  test('finds a good word where nothing was met in full', () => {
    const none = [...'CDEFGAB'].map((station) =>
      confirm(`clip-${station}`, 'place', 'exercise', 'reps', 'together'),
    );
    const squadCriteria = ['care', 'team'].map((criterion) => {
      return { kind: 'squad-marked', squad: 'plum', criterion, points: 0 } as const;
    });
    expect(squadSlip({ decisions: decide(...none, kept, ...squadCriteria) }).well).toEqual([
      { code: 'took-part' },
    ]);
  });
});

describe('a pupil’s slip', () => {
  const slips = buildPupilSlips(
    buildSlipInput({ decisions: decide(...inked, kept, confirm('clip-C', 'reps')) }),
  );

  test('is about the steps that the pupil was there for', () => {
    const stations = slips.map(({ next }) =>
      next.flatMap((point) => ('stations' in point ? point.stations : [])),
    );
    expect(stations[0]).toContain('C');
    expect(stations[1]).not.toContain('C');
  });

  test('of an absent or excused pupil has no word about the work, and no reason', () => {
    expect(slips.slice(2).map((slip) => writeSlip(plan, slip))).toEqual([
      `## Milo, Plum squad\n\n${SLIP.absent}\n`,
      `## Ansa, Plum squad\n\n${SLIP.excused}\n`,
    ]);
  });

  test('names nobody else, gives no points, no place among others, and compares nothing', () => {
    for (const slip of slips) {
      const text = writeSlip(plan, slip);
      for (const other of pupils.filter(({ id }) => id !== slip.pupil?.id)) {
        expect(text).not.toContain(other.family);
        expect(slip.pupil?.given === other.given || !text.includes(other.given)).toBe(true);
      }
      expect(text).not.toMatch(/\d|best|worst|better|faster|slower|most|least|rank|than|winner/i);
    }
  });
});

describe('the words of slips', () => {
  const well = [
    { code: 'all-met', stations: ['A', 'B'] },
    ...['place', 'exercise', 'reps', 'together'].map((criterion) => ({
      code: 'always-met' as const,
      criterion,
    })),
    ...['place', 'exercise', 'reps', 'together'].map((criterion) => ({
      code: 'met-at' as const,
      criterion,
      stations: ['A', 'D'],
    })),
    { code: 'order-kept' },
    { code: 'squad-full', criterion: 'team' },
    { code: 'took-part' },
  ] as const;
  const next = [
    ...['place', 'exercise', 'reps', 'together'].map((criterion) => ({
      code: 'not-met' as const,
      criterion,
      stations: ['A', 'D'],
    })),
    { code: 'no-clip', stations: ['C'] },
    { code: 'out-of-order', stations: ['F', 'G'] },
    { code: 'squad-more', criterion: 'care' },
  ] as const;
  const sentences = [
    ...well.map((point) => sayWell(plan, point)),
    ...next.map((point) => sayNext(plan, point)),
    SLIP.nothingNext,
    SLIP.absent,
    SLIP.excused,
    SLIP.waiting,
  ];

  // Wikipedia, "Flesch–Kincaid readability tests": "Green Eggs and Ham" has 5.7 words a sentence and 1.02 syllables a
  // word, and a grade of −1.3; from memory.
  test('are measured by a formula that gives a published text its published grade', () => {
    expect(getGrade({ words: 5700, sentences: 1000, syllables: 5814 })).toBeCloseTo(-1.3, 1);
  });

  test('and that finds a page for grown-ups hard', () => {
    const law =
      'Identification of categories of personal information necessitates proportionate retention schedules.';
    expect(getGrade(countText(law))).toBeGreaterThan(12);
  });

  test.each(sentences)('“%s” is for readers of about ten or younger', (sentence) => {
    expect(getGrade(countText(sentence))).toBeLessThanOrEqual(5);
  });

  test('as a whole slip are too', () => {
    const slip = squadSlip({
      decisions: decide(...inked, kept, confirm('clip-A', 'together'), confirm('clip-D', 'together')),
    });
    const text = writeSlip(plan, slip).replace(/[#*-]/g, '');
    expect(getGrade(countText(text))).toBeLessThanOrEqual(5);
  });

  test('never push: the count comes with leave to stop', () => {
    expect(sayNext(plan, { code: 'not-met', criterion: 'reps', stations: ['A'] })).toMatch(
      /stop if it hurts/i,
    );
  });
});
