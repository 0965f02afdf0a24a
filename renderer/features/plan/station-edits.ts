import { BLANK } from '../../../src-core/lesson/find-loose-ends.ts';
import { type LibraryExercise, takeExercise } from '../../../src-core/lesson/library/library.ts';
import type { Plan, Station, StationCode } from '../../../src-core/lesson/plan.ts';
import type { PlanEdit } from './plan-edit.ts';

/** Reps of a station before anybody has thought about it. */
const USUAL_REPS = 10;

const LETTERS = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ'];

/** The first letter that no station has; after Z come A1, A2 and so on. */
export function findFreeCode({ stations }: Plan): StationCode {
  const taken = new Set(stations.map(({ code }) => code));
  const numbered = stations.map((_, at) => `A${at + 1}`);
  return [...LETTERS, ...numbered].find((code) => !taken.has(code)) ?? 'A0';
}

/** One more station at the end, on no route yet. */
export const addStation: PlanEdit = (plan) => ({
  stations: [
    ...plan.stations,
    { code: findFreeCode(plan), place: BLANK, exercise: BLANK, reps: USUAL_REPS, counting: 'cycle' },
  ],
});

/** Without a station, on the field and on every route and leg. The last station stays. */
export function removeStation(code: StationCode): PlanEdit {
  return ({ stations, squads, rotation }) => {
    if (stations.length < 2) return {};
    const left = stations.filter((station) => station.code !== code);
    return {
      stations: left,
      squads: squads.map((squad) => {
        const route = squad.route.filter((stop) => stop !== code);
        const walked = route.length > 0 ? route : [left[0]?.code ?? code];
        return { ...squad, route: walked, startsAt: walked[0] ?? squad.startsAt };
      }),
      rotation: {
        ...rotation,
        leftOut: rotation.leftOut.filter((station) => station !== code),
        fixedStarts: rotation.fixedStarts.filter(({ station }) => station !== code),
        forbidden: rotation.forbidden.filter((leg) => !leg.includes(code)),
        distances: rotation.distances.filter(({ between }) => !between.includes(code)),
      },
    };
  };
}

/** A station moved by so many places in the list; routes stay. */
export function moveStation(code: StationCode, by: -1 | 1): PlanEdit {
  return ({ stations }) => {
    const from = stations.findIndex((station) => station.code === code);
    const [one, other] = [stations[from], stations[from + by]];
    if (!one || !other) return {};
    return { stations: stations.with(from, other).with(from + by, one) };
  };
}

/** Fields of a station that may be absent. */
export type OptionalField = {
  [Field in keyof Station]-?: undefined extends Station[Field] ? Field : never;
}[keyof Station];

/** A station with some fields otherwise. */
export function changeStation(code: StationCode, change: Partial<Station>): PlanEdit {
  return ({ stations }) => ({
    stations: stations.map((station) => (station.code === code ? { ...station, ...change } : station)),
  });
}

/** A station with one optional field otherwise; null or blank takes it away. */
export function changeOptional<Field extends OptionalField>(
  code: StationCode,
  field: Field,
  value: Station[Field] | null,
): PlanEdit {
  return ({ stations }) => ({
    stations: stations.map((station) => {
      if (station.code !== code) return station;
      const { [field]: _, ...rest } = station;
      return (value === null || value === '' ? rest : { ...station, [field]: value }) as Station;
    }),
  });
}

/** An exercise of the library on a station, with all that it says; the place, reps and clue stay. */
export function putExercise(code: StationCode, exercise: LibraryExercise): PlanEdit {
  return (plan) => {
    // What the exercise before it said of itself goes with it.
    const {
      equipment: _,
      demonstration: __,
      ...station
    } = plan.stations.find((one) => one.code === code) ?? {};
    return {
      stations: plan.stations.map((one) =>
        one.code === code ? ({ ...station, ...takeExercise(exercise) } as Station) : one,
      ),
    };
  };
}

/** An exercise in the teacher's own words: it is no longer the library's, and what is left of that is a loose end. */
export function nameExercise(code: StationCode, exercise: string): PlanEdit {
  return ({ stations }) => ({
    stations: stations.map((station) => {
      if (station.code !== code) return station;
      const { libraryCode: _, ...own } = station;
      return { ...own, exercise };
    }),
  });
}

/** A station under another letter, wherever the plan names it. */
export function recodeStation(from: StationCode, to: StationCode): PlanEdit {
  const recode = (code: StationCode) => (code === from ? to : code);
  const recodePair = ([one, other]: readonly [StationCode, StationCode]): [StationCode, StationCode] => [
    recode(one),
    recode(other),
  ];
  return ({ stations, squads, rotation }) => ({
    stations: stations.map((station) => ({ ...station, code: recode(station.code) })),
    squads: squads.map((squad) => ({
      ...squad,
      startsAt: recode(squad.startsAt),
      route: squad.route.map(recode),
    })),
    rotation: {
      ...rotation,
      leftOut: rotation.leftOut.map(recode),
      fixedStarts: rotation.fixedStarts.map((start) => ({ ...start, station: recode(start.station) })),
      forbidden: rotation.forbidden.map(recodePair),
      distances: rotation.distances.map((one) => ({ ...one, between: recodePair(one.between) })),
    },
  });
}
