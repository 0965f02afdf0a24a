import { expect, test } from 'vitest';
import { checkWholePlan } from '../../../src-core/app/edit-plan.ts';
import { planRoutes, planSquads, walkEditedPlan } from '../../../src-core/app/plan-lesson.ts';
import { buildSmallPlan } from '../lesson/small-plan.ts';

test('forming fewer squads leaves no fixed start of a squad that is gone', () => {
  const plan = buildSmallPlan();
  plan.rotation.fixedStarts.push({ squad: 'teal', station: 'A' }, { squad: 'plum', station: 'B' });
  const formed = planSquads(plan, ['k-1', 'k-2', 'k-3'], 1);
  if (!formed.ok) throw new Error('one squad can be formed');
  expect(formed.value.plan.rotation.fixedStarts).toEqual([{ squad: 'teal', station: 'A' }]);
  expect(checkWholePlan(formed.value.plan)).toEqual([]);
});

test('routes are planned for a plan as edited, or the wish to blame is named', () => {
  const plan = buildSmallPlan();
  const planned = planRoutes(plan);
  if (!planned.ok) throw new Error('two squads can walk two stations');
  expect(planned.value.plan.squads.map(({ route }) => route)).toEqual(
    planned.value.suggestion.routes.map(({ route }) => route),
  );
  plan.rotation.forbidden.push(['A', 'B']);
  expect(planRoutes(plan).problems.map(({ code }) => code)).toEqual(['routes-legs-needed']);
  expect(planRoutes({ format: 'x' }).problems.map(({ code }) => code)).toEqual(['plan-not-ours']);
});

test('a class is walked round, the same for the same seed; options that are left out are estimated', () => {
  const walked = walkEditedPlan(buildSmallPlan(), { seed: 4, legSeconds: undefined });
  expect(walked).toMatchObject({ ok: true, value: { options: { seed: 4, legSeconds: 30 } } });
  expect(walkEditedPlan(buildSmallPlan(), { seed: 4 })).toEqual(walked);
  expect(walkEditedPlan({ format: 'x' }, {}).ok).toBe(false);
});
