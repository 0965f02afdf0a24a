import { expect, test } from 'vitest';
import { checkWholePlan } from '../../../src-core/app/edit-plan.ts';
import { planSquads } from '../../../src-core/app/plan-lesson.ts';
import { buildSmallPlan } from '../lesson/small-plan.ts';

test('forming fewer squads leaves no fixed start of a squad that is gone', () => {
  const plan = buildSmallPlan();
  plan.rotation.fixedStarts.push({ squad: 'teal', station: 'A' }, { squad: 'plum', station: 'B' });
  const formed = planSquads(plan, ['k-1', 'k-2', 'k-3'], 1);
  if (!formed.ok) throw new Error('one squad can be formed');
  expect(formed.value.plan.rotation.fixedStarts).toEqual([{ squad: 'teal', station: 'A' }]);
  expect(checkWholePlan(formed.value.plan)).toEqual([]);
});
