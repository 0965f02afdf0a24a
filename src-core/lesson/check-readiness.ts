import { convertToLab, parseHexColour } from '../platform/cielab.ts';
import { checkTexts } from './check-texts.ts';
import { checkTimes } from './check-times.ts';
import type { ReadinessProblem } from './lesson-problem.ts';
import { hasClues, type Plan } from './plan.ts';

/**
 * Everything in a plan that would go wrong in class although it can be marked by: texts too long for their card,
 * clues that lead nowhere, pinnies that look alike, more work than time. Asked for while a lesson is planned; a
 * lesson that was taught is not held up by it.
 */
export function checkReadiness(plan: Plan): readonly ReadinessProblem[] {
  return [
    ...checkTexts(plan),
    ...checkClues(plan),
    ...checkSquadCount(plan),
    ...checkPinnies(plan),
    ...checkStandards(plan),
    ...checkRotation(plan),
    ...checkTimes(plan),
  ];
}

/** A lesson without any clue walks by its list of stations; one with clues needs one for every place to be found. */
function checkClues(plan: Plan): ReadinessProblem[] {
  if (!hasClues(plan)) return [];
  const { stations, squads } = plan;
  const sought = new Set(squads.flatMap(({ route }) => route.slice(1)));
  return stations.flatMap(({ code, clue }, at): ReadinessProblem[] =>
    clue === undefined && sought.has(code)
      ? [{ code: 'plan-clue-missing', path: `stations[${at}].clue`, station: code }]
      : [],
  );
}

function checkSquadCount({ stations, squads, rotation }: Plan): ReadinessProblem[] {
  const open = stations.filter(({ code }) => !rotation.leftOut.includes(code)).length;
  return squads.length > open
    ? [{ code: 'plan-too-many-squads', path: 'squads', squads: squads.length, stations: open }]
    : [];
}

/**
 * How far apart two pinnies must look, in CIELAB (CIE 15, ΔE*ab). Of the desk's eight pinnies the nearest two (teal and
 * slate) are 27.9 apart; pure red and a dark red, which a hall's light makes one, are 19.4 apart.
 */
export const PINNIE_DISTANCE = 25;

function checkPinnies({ squads }: Plan): ReadinessProblem[] {
  const colours = squads.map(({ pinnie }) => convertToLab(parseHexColour(pinnie.colour)));
  const getDistance = (one: number, other: number) =>
    Math.hypot(...[0, 1, 2].map((axis) => (colours[one]?.[axis] ?? 0) - (colours[other]?.[axis] ?? 0)));
  return squads.flatMap(({ code }, at): ReadinessProblem[] => {
    const alike = squads.findIndex((_, before) => before < at && getDistance(at, before) < PINNIE_DISTANCE);
    const other = squads[alike];
    return other
      ? [{ code: 'plan-pinnies-alike', path: `squads[${at}].pinnie.colour`, squads: [other.code, code] }]
      : [];
  });
}

function checkStandards({ standards, rubric }: Plan): ReadinessProblem[] {
  const known = new Set(standards.map(({ code }) => code));
  return (['clip', 'squad'] as const).flatMap((kind) =>
    rubric[kind].flatMap((criterion, at) =>
      criterion.standards.flatMap((standard, place): ReadinessProblem[] => {
        const path = `rubric.${kind}[${at}].standards[${place}]`;
        return known.has(standard) ? [] : [{ code: 'plan-standard-unknown', path, standard }];
      }),
    ),
  );
}

function checkRotation({ squads, stations, rotation }: Plan): ReadinessProblem[] {
  const known = new Set(stations.map(({ code }) => code));
  const named = [
    ...rotation.leftOut.map((station, at) => [`leftOut[${at}]`, station] as const),
    ...rotation.fixedStarts.map(({ station }, at) => [`fixedStarts[${at}].station`, station] as const),
    ...rotation.forbidden.flatMap((leg, at) => leg.map((one) => [`forbidden[${at}]`, one] as const)),
    ...rotation.distances.flatMap(({ between }, at) =>
      between.map((one) => [`distances[${at}].between`, one] as const),
    ),
  ];
  const lost = named.flatMap(([path, station]): ReadinessProblem[] =>
    known.has(station) ? [] : [{ code: 'plan-rotation-station-unknown', path: `rotation.${path}`, station }],
  );
  const strangers = rotation.fixedStarts.flatMap(({ squad }, at): ReadinessProblem[] =>
    squads.some(({ code }) => code === squad)
      ? []
      : [{ code: 'plan-squad-unknown', path: `rotation.fixedStarts[${at}].squad`, squad }],
  );
  return [
    ...lost,
    ...strangers,
    ...checkLegs(squads, rotation.forbidden),
    ...checkVisits(squads, rotation.leftOut),
    ...checkStarts(squads, rotation.fixedStarts),
  ];
}

function checkVisits(squads: Plan['squads'], leftOut: readonly string[]): ReadinessProblem[] {
  return squads.flatMap(({ code, route }, at) =>
    route.flatMap((station, slot): ReadinessProblem[] => {
      const path = `squads[${at}].route[${slot}]`;
      return leftOut.includes(station) ? [{ code: 'plan-left-out-visited', path, squad: code, station }] : [];
    }),
  );
}

function checkStarts(squads: Plan['squads'], fixed: Plan['rotation']['fixedStarts']): ReadinessProblem[] {
  return squads.flatMap(({ code, route }, at): ReadinessProblem[] => {
    const wanted = fixed.find(({ squad }) => squad === code)?.station;
    if (wanted === undefined || wanted === route[0]) return [];
    return [{ code: 'plan-start-not-kept', path: `squads[${at}].route[0]`, squad: code, station: wanted }];
  });
}

function checkLegs(squads: Plan['squads'], forbidden: Plan['rotation']['forbidden']): ReadinessProblem[] {
  const shut = new Set(forbidden.map((leg) => leg.join(' ')));
  return squads.flatMap(({ code, route }, at) =>
    route.slice(1).flatMap((to, slot): ReadinessProblem[] => {
      const leg = [route[slot] ?? '', to] as const;
      const path = `squads[${at}].route[${slot + 1}]`;
      return shut.has(leg.join(' ')) ? [{ code: 'plan-leg-forbidden', path, squad: code, leg }] : [];
    }),
  );
}
