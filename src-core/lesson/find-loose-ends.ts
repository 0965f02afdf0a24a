import type { LooseEnd } from './lesson-problem.ts';
import { BUILT_IN_EXERCISES } from './library/built-in.ts';
import type { Plan, Station } from './plan.ts';
import type { Pupil } from './roster.ts';

/** Stands for a place or an exercise that is still to be chosen; the format wants some sign there. */
export const BLANK = '–';

/**
 * What is still to be filled in before the lesson can be held, in the order of the sheet. Nothing of it keeps a plan
 * from being saved.
 */
export function findLooseEnds(plan: Plan, pupils: readonly Pick<Pupil, 'squad'>[]): readonly LooseEnd[] {
  return [...listStationEnds(plan), ...listSquadEnds(plan, pupils)];
}

function listStationEnds({ stations, squads, rotation }: Plan): readonly LooseEnd[] {
  const visited = new Set(squads.flatMap(({ route }) => route));
  return stations.flatMap((station, at): LooseEnd[] => {
    const { code, place, exercise, caution } = station;
    const path = (field: string) => `stations[${at}].${field}`;
    const isLoose = !visited.has(code) && !rotation.leftOut.includes(code);
    const other = exercise === BLANK ? null : findOtherExercise(station);
    const isBlank = exercise === BLANK;
    const ends: readonly (LooseEnd | false)[] = [
      place === BLANK && { code: 'plan-place-blank', station: code, path: path('place') },
      isBlank && { code: 'plan-exercise-blank', station: code, path: path('exercise') },
      !isBlank && !caution && { code: 'plan-caution-blank', station: code, path: path('caution') },
      other !== null && {
        code: 'plan-words-left-over',
        station: code,
        path: path('countsAs'),
        exercise: other,
      },
      isLoose && { code: 'plan-station-on-no-route', station: code, path: 'rotation' },
    ];
    return ends.filter((end) => end !== false);
  });
}

/** The exercise of the library that all words of a station but its name are from; null where it is the library's. */
function findOtherExercise({
  libraryCode,
  exercise,
  countsAs,
  caution,
  cycleSeconds,
}: Station): string | null {
  if (libraryCode !== undefined) return null;
  const from = BUILT_IN_EXERCISES.find(
    (one) =>
      one.countsAs === countsAs &&
      one.caution === caution &&
      one.cycleSeconds.join() === cycleSeconds?.join(),
  );
  return from === undefined || from.name === exercise ? null : from.name;
}

function listSquadEnds({ squads }: Plan, pupils: readonly Pick<Pupil, 'squad'>[]): readonly LooseEnd[] {
  if (pupils.length === 0) return [{ code: 'plan-class-empty', path: 'squads' }];
  return squads.flatMap(({ code }, at): LooseEnd[] =>
    pupils.some(({ squad }) => squad === code)
      ? []
      : [{ code: 'plan-squad-empty', squad: code, path: `squads[${at}]` }],
  );
}
