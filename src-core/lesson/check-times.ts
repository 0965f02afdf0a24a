import type { ReadinessProblem } from './lesson-problem.ts';
import {
  findMetres,
  findPeriodSeconds,
  findRepsSeconds,
  findSlotSeconds,
  SET_UP_SECONDS,
  WALK_METRES_PER_SECOND,
} from './lesson-timing.ts';
import type { Plan, Station } from './plan.ts';

/**
 * Whether the lesson's parts fit its period, and each station's reps, card and way its slot. Reckoned at the quickest
 * usual tempo and with given distances alone, so that whatever is named here cannot be done by any class.
 */
export function checkTimes(plan: Plan): readonly ReadinessProblem[] {
  const period = findPeriodSeconds(plan);
  const slot = findSlotSeconds(plan);
  // A period that is not there, or runs backwards, is the plan's own problem.
  if (period === null || slot === null) return [];
  const minutes = plan.timing.warmUpMinutes + plan.timing.clearUpMinutes;
  if (minutes * 60 >= period) {
    const periodMinutes = Math.round(period / 60);
    return [{ code: 'plan-timing-too-long', path: 'timing', minutes: Math.round(minutes), periodMinutes }];
  }
  return plan.stations.flatMap((station, at) => checkStation(plan, station, { at, slotSeconds: slot }));
}

function checkStation(
  plan: Plan,
  station: Station,
  { at, slotSeconds }: { readonly at: number; readonly slotSeconds: number },
): ReadinessProblem[] {
  const isVisited = plan.squads.some(({ route }) => route.includes(station.code));
  const [reps = null] = findRepsSeconds(station) ?? [];
  if (!isVisited || reps === null) return [];
  const needed = reps + SET_UP_SECONDS + findLongestWay(plan, station.code) / WALK_METRES_PER_SECOND;
  const facts = { station: station.code, slotSeconds: Math.floor(slotSeconds) };
  if (reps > slotSeconds) {
    const path = `stations[${at}].reps`;
    return [{ code: 'plan-reps-too-many', path, ...facts, neededSeconds: Math.ceil(reps) }];
  }
  return needed > slotSeconds
    ? [{ code: 'plan-slot-too-short', path: `stations[${at}]`, ...facts, neededSeconds: Math.ceil(needed) }]
    : [];
}

/** The longest given way by which some squad comes here, in metres; 0 where none is given. */
function findLongestWay(plan: Plan, station: string): number {
  const ways = plan.squads.map(({ route }) => {
    const from = route[route.indexOf(station) - 1];
    return from === undefined ? 0 : (findMetres(plan, from, station) ?? 0);
  });
  return Math.max(0, ...ways);
}
