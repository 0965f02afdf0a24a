import { describe, expect, test } from 'vitest';
import { checkReadiness } from '../../../src-core/lesson/check-readiness.ts';
import { BUILT_IN_EXERCISES } from '../../../src-core/lesson/library/built-in.ts';
import { mergeLibraries, takeExercise } from '../../../src-core/lesson/library/library.ts';
import { planSchema } from '../../../src-core/lesson/plan.ts';
import { getRawPlan } from './small-plan.ts';

describe('the built-in exercises', () => {
  test('are forty at least, each with its own code and name', () => {
    expect(BUILT_IN_EXERCISES.length).toBeGreaterThanOrEqual(40);
    for (const part of ['code', 'name'] as const)
      expect(new Set(BUILT_IN_EXERCISES.map((one) => one[part])).size).toBe(BUILT_IN_EXERCISES.length);
  });

  test('ask for no loads, nothing on the neck or head, and no speed', () => {
    // Exercises that school guidance commonly rules out (common practice); cautions may name what is not to be done.
    const ruledOut =
      /barbell|dumb-?bell|kettle|weight(?!s\b)|neck bridge|head ?stand|hand ?stand|straight-leg sit|deep knee|faster|quick|as (many|fast) as/i;
    for (const { caution: _, ...said } of BUILT_IN_EXERCISES)
      expect(Object.values(said).join(' ')).not.toMatch(ruledOut);
  });

  test('have a tempo that runs from short to long', () => {
    for (const { cycleSeconds } of BUILT_IN_EXERCISES) expect(cycleSeconds[0]).toBeLessThan(cycleSeconds[1]);
  });

  test.each(BUILT_IN_EXERCISES.map((one) => [one.name, one] as const))(
    '%s makes a station that stands the check',
    (_, one) => {
      const raw = getRawPlan();
      const [first, ...others] = raw.stations;
      const plan = planSchema.parse({
        ...raw,
        stations: [{ code: first?.code, place: first?.place, reps: 10, ...takeExercise(one) }, ...others],
      });
      expect(checkReadiness(plan)).toEqual([]);
      expect(plan.stations[0]).toMatchObject({ exercise: one.name, libraryCode: one.code });
    },
  );
});

test('a teacher’s own exercise takes the place of one with its code; others are added', () => {
  const [first] = BUILT_IN_EXERCISES;
  if (!first) throw new Error('no exercises');
  const own = [
    { ...first, name: 'Our reaches' },
    { ...first, code: 'gull-walk', name: 'Gull walk' },
  ];
  const merged = mergeLibraries(BUILT_IN_EXERCISES, own);
  expect(merged).toHaveLength(BUILT_IN_EXERCISES.length + 1);
  expect(merged.filter(({ from }) => from === 'own').map(({ name }) => name)).toEqual([
    'Gull walk',
    'Our reaches',
  ]);
  expect(merged.find(({ code }) => code === first.code)?.name).toBe('Our reaches');
});
