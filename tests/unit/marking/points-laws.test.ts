import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { JournalDecision } from '../../../src-core/marking/journal-event.ts';
import { ORDER_RULES } from '../../../src-core/marking/order-rule.ts';
import { scoreLesson } from '../../../src-core/marking/points.ts';
import type { Proposal } from '../../../src-core/marking/proposal.ts';
import type { ScoreInput, SlotResult } from '../../../src-core/marking/score-input.ts';
import type { Sum } from '../../../src-core/marking/sum.ts';
import { buildHarbourPlan, buildInput, buildPupil, decide } from './harbour.ts';

const STATIONS = [...'CDEFGAB'];
const CRITERIA = ['place', 'exercise', 'reps', 'together'];
const START_MS = Date.parse('2025-05-15T10:47:00-03:00');

const slots: fc.Arbitrary<readonly SlotResult[]> = fc
  .tuple(
    fc.shuffledSubarray([0, 1, 2, 3, 4, 5, 6], { minLength: 7 }),
    fc.array(fc.constantFrom('there', 'broken', 'missing', 'untimed'), { minLength: 7, maxLength: 7 }),
  )
  .map(([positions, kinds]) =>
    STATIONS.map((station, slot): SlotResult => {
      const kind = kinds[slot];
      const isMissing = kind === 'missing';
      const position = isMissing ? null : (positions[slot] ?? null);
      return {
        slot,
        station,
        clip: isMissing ? null : `clip-${station}`,
        startMs: position === null || kind === 'untimed' ? null : START_MS + position * 300_000,
        position,
        orderFlag: kind === 'broken' ? `out-of-order:plum:clip-${station}` : null,
      };
    }),
  );

const proposals: fc.Arbitrary<ReadonlyMap<string, readonly Proposal[]>> = fc
  .array(fc.array(fc.boolean(), { minLength: 4, maxLength: 4 }), { minLength: 7, maxLength: 7 })
  .map(
    (met) =>
      new Map(
        STATIONS.map((station, slot) => [
          `clip-${station}`,
          CRITERIA.map((criterion, at) => ({
            criterion,
            met: met[slot]?.[at] ?? false,
            confidence: 0.5,
            reason: { code: 'only-slot-left', station: 'A' },
          })),
        ]),
      ),
  );

const change = fc.option(
  fc.oneof(
    fc.record({ type: fc.constant('by' as const), points: fc.double({ min: -20, max: 20, noNaN: true }) }),
    fc.record({ type: fc.constant('to' as const), points: fc.double({ min: 0, max: 20, noNaN: true }) }),
  ),
);

const override: fc.Arbitrary<JournalDecision> = fc.record({
  kind: fc.constant('points-overridden' as const),
  of: fc.oneof(
    fc.constant({ type: 'pupil' as const, pupil: 'k-1' }),
    fc.constant({ type: 'squad' as const, squad: 'plum' }),
    fc
      .constantFrom(...STATIONS)
      .map((station): { type: 'clip'; clip: string } => ({ type: 'clip', clip: `clip-${station}` })),
  ),
  change,
  reason: fc.constant('a reason'),
});

const settled: fc.Arbitrary<JournalDecision> = fc.record({
  kind: fc.constant('flag-settled' as const),
  flag: fc.constantFrom(...STATIONS).map((station) => `out-of-order:plum:clip-${station}`),
  settled: fc.constantFrom('kept' as const, 'cleared' as const),
  reason: fc.constant(null),
});

const plan = fc
  .record({
    award: fc.constantFrom({ rule: 'all-or-nothing', points: 2 }, { rule: 'sum' }),
    points: fc.double({ min: 0, max: 3, noNaN: true }).map((points) => Math.round(points * 100) / 100),
    orderRule: fc.constantFrom(...ORDER_RULES),
  })
  .map(({ award, points, orderRule }) => {
    const { rubric } = buildHarbourPlan();
    const clip = rubric.clip.map((criterion) => ({ ...criterion, points }));
    return buildHarbourPlan({ orderRule, rubric: { ...rubric, clip, award } });
  });

const input: fc.Arbitrary<ScoreInput> = fc
  .record({
    plan,
    slots,
    proposals,
    decisions: fc.array(fc.oneof(override, settled), { maxLength: 5 }),
    arrived: fc.constantFrom(null, '10:40', '10:52', '11:05', '11:40'),
    attendance: fc.constantFrom('present' as const, 'late' as const),
  })
  .map((made) =>
    buildInput({
      plan: made.plan,
      squads: [{ squad: 'plum', slots: made.slots }],
      proposals: made.proposals,
      decisions: decide(...made.decisions),
      pupils: [buildPupil('k-1', { attendance: made.attendance, arrived: made.arrived })],
      flags: [],
    }),
  );

/** Every sum of a lesson, a record per squad and pupil. */
function listSums(lesson: ScoreInput): readonly Readonly<Record<string, Sum>>[] {
  const { squads, pupils } = scoreLesson(lesson);
  return [...squads.map(({ byRule }) => byRule), ...pupils.flatMap(({ byRule }) => byRule ?? [])];
}

describe('points of any lesson', () => {
  test('lie between nothing and the maximum, under every rule', () => {
    fc.assert(
      fc.property(input, (lesson) => {
        for (const sum of listSums(lesson).flatMap((byRule) => Object.values(byRule))) {
          expect(sum.points).toBeGreaterThanOrEqual(0);
          expect(sum.points).toBeLessThanOrEqual(sum.max);
        }
      }),
    );
  });

  test('never fall from a stricter order rule to a milder one', () => {
    fc.assert(
      fc.property(input, (lesson) => {
        for (const byRule of listSums(lesson)) {
          const points = ORDER_RULES.map((rule) => byRule[rule]?.points ?? Number.NaN);
          expect(points).toEqual([...points].sort((a, b) => a - b));
        }
      }),
    );
  });

  test('are the sum of their parts', () => {
    fc.assert(
      fc.property(input, (lesson) => {
        for (const { parts, points } of listSums(lesson).flatMap((byRule) => Object.values(byRule))) {
          expect(parts.reduce((sum, part) => sum + part.points, 0)).toBeCloseTo(points, 6);
        }
      }),
    );
  });
});
