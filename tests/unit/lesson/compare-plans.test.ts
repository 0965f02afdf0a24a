import { describe, expect, test } from 'vitest';
import { describePlanChange } from '../../../renderer/text/english/plan-changes.ts';
import { checkPlan } from '../../../src-core/lesson/check-plan.ts';
import { checkReadiness } from '../../../src-core/lesson/check-readiness.ts';
import { comparePlans } from '../../../src-core/lesson/compare-plans.ts';
import { buildNewPlan, buildPlanCopy } from '../../../src-core/lesson/new-plan.ts';
import type { Plan } from '../../../src-core/lesson/plan.ts';
import { buildSmallPlan } from './small-plan.ts';

function changesAfter(change: (plan: Plan) => void) {
  const [was, now] = [buildSmallPlan(), buildSmallPlan()];
  change(now);
  return comparePlans(was, now);
}

describe('what changed between two plans', () => {
  test('is nothing between a plan and itself', () => {
    expect(changesAfter(() => {})).toEqual([]);
  });

  const cases: readonly [string, (plan: Plan) => void, string][] = [
    [
      'a figure',
      (plan) => Object.assign(plan.stations[0] ?? {}, { reps: 12 }),
      'Station A, reps: 12, was 10.',
    ],
    [
      'a word that came',
      (plan) => Object.assign(plan.stations[1] ?? {}, { clue: 'By the nets' }),
      'Station B, clue: “By the nets”, was empty.',
    ],
    ['a station that went', (plan) => void plan.stations.pop(), 'Station B was taken out.'],
    ['another order', (plan) => void plan.stations.reverse(), 'Station: another order, B A.'],
    [
      'a route',
      (plan) => Object.assign(plan.squads[0] ?? {}, { route: ['B', 'A'] }),
      'Squad teal, route: B A, was A B.',
    ],
    [
      'the order rule',
      (plan) => Object.assign(plan, { orderRule: 'report' }),
      'Marking, order rule: “report”, was “void-clip”.',
    ],
    [
      'the day',
      (plan) => Object.assign(plan.lesson, { date: '2025-09-15' }),
      'Lesson, date: “2025-09-15”, was “2025-05-15”.',
    ],
  ];

  test.each(cases)('is told of %s in one sentence', (_, change, sentence) => {
    expect(changesAfter(change).map(describePlanChange)).toEqual([sentence]);
  });
});

describe('a plan for another term', () => {
  test('keeps all but the day and counts the cards up, so that old ones are foreign', () => {
    const copy = buildPlanCopy(buildSmallPlan(), { date: '2025-09-15', code: null });
    expect(comparePlans(buildSmallPlan(), copy).map(({ part, field }) => `${part}.${field}`)).toEqual([
      'lesson.revision',
      'lesson.date',
    ]);
    expect(copy.lesson.revision).toBe(2);
  });

  test('may have a code of its own, and then begins with the first print', () => {
    const { lesson } = buildPlanCopy(buildSmallPlan(), { date: '2025-09-15', code: 'PIER-2' });
    expect(lesson).toMatchObject({ code: 'PIER-2', revision: 1 });
  });
});

test('a new plan has nothing to mend', () => {
  const { lesson, zone, periods } = buildSmallPlan();
  const plan = buildNewPlan({ lesson, zone, periods });
  expect([...checkPlan(plan), ...checkReadiness(plan)]).toEqual([]);
  expect(plan.squads.map(({ route }) => route.join(''))).toEqual(['ABCD', 'BCDA', 'CDAB', 'DABC']);
});
