import type { Plan } from '../lesson/plan.ts';

/**
 * Whether clips read under one plan are read the same under another: a clip's squad is told by what squads are called,
 * its time by the zone, whether it is searched by the lesson's day, and cards by lesson, printing and stations. Words,
 * times, routes and rules change what is made of a reading, never the reading.
 */
export function isReadAlike(one: Plan, other: Plan): boolean {
  return JSON.stringify(getReadingParts(one)) === JSON.stringify(getReadingParts(other));
}

function getReadingParts({ zone, lesson, squads, stations }: Plan): unknown {
  const { date, code, revision } = lesson;
  return [
    zone,
    [date, code, revision],
    squads.map(({ route, startsAt, ...signs }) => signs),
    stations.map((station) => station.code),
  ];
}
