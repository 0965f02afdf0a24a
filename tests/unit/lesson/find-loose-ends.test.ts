import { expect, test } from 'vitest';
import { BLANK, findLooseEnds } from '../../../src-core/lesson/find-loose-ends.ts';
import { BUILT_IN_EXERCISES } from '../../../src-core/lesson/library/built-in.ts';
import { takeExercise } from '../../../src-core/lesson/library/library.ts';
import { buildSmallPlan } from './small-plan.ts';

const CLASS = [{ squad: 'teal' }, { squad: 'plum' }];

test('a plan with everything said leaves no loose end', () => {
  const plan = buildSmallPlan(({ stations }) => {
    for (const station of stations) Object.assign(station, { caution: 'Dry ground' });
  });
  expect(findLooseEnds(plan, CLASS)).toEqual([]);
});

test('what is still to be filled in is named with its place on the sheet', () => {
  const plan = buildSmallPlan(({ stations, squads: [, plum] }) => {
    Object.assign(stations[0] ?? {}, { place: BLANK, exercise: BLANK });
    if (plum) plum.route = ['A'];
    Object.assign(plum ?? {}, { startsAt: 'A' });
    stations.push({ code: 'C', place: 'Slip', exercise: 'Wall sits', reps: 5, counting: 'cycle' });
  });
  expect(findLooseEnds(plan, [{ squad: 'teal' }]).map(({ code, path }) => [code, path])).toEqual([
    ['plan-place-blank', 'stations[0].place'],
    ['plan-exercise-blank', 'stations[0].exercise'],
    ['plan-caution-blank', 'stations[1].caution'],
    ['plan-caution-blank', 'stations[2].caution'],
    ['plan-station-on-no-route', 'rotation'],
    ['plan-squad-empty', 'squads[1]'],
  ]);
  expect(findLooseEnds(plan, []).at(-1)).toEqual({ code: 'plan-class-empty', path: 'squads' });
});

test('an exercise renamed in the teacher’s own words is still counted as the library’s, until that is said anew', () => {
  const [exercise] = BUILT_IN_EXERCISES;
  if (!exercise) throw new Error('no exercises');
  const { libraryCode: _, ...words } = takeExercise(exercise);
  const renamed = (change: object) =>
    findLooseEnds(
      buildSmallPlan(({ stations }) => {
        for (const station of stations) Object.assign(station, { caution: 'Dry ground' });
        Object.assign(stations[0] ?? {}, words, { exercise: 'Gull wings' }, change);
      }),
      CLASS,
    );
  expect(renamed({})).toEqual([
    { code: 'plan-words-left-over', station: 'A', path: 'stations[0].countsAs', exercise: exercise.name },
  ]);
  expect(renamed({ countsAs: 'Wings out and in: one' })).toEqual([]);
  expect(renamed({ exercise: exercise.name })).toEqual([]);
});
