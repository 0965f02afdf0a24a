import type { UpgradeStep } from './upgrade.ts';

/**
 * From version 1 of a plan to 2. A station's clue used to lead away from it, to the next one; it now leads to it, so
 * that squads may walk in different orders. A clue moves to the station that follows its own on the first route that
 * holds it; one that nothing follows is dropped.
 */
export const moveCluesOn: UpgradeStep = (content) => {
  const stations = listGroups(content.stations);
  const routes = listGroups(content.squads).map(({ route }) => (Array.isArray(route) ? route : []));
  const clues = new Map<unknown, unknown>();
  for (const { code, clue } of stations) {
    if (clue !== undefined) clues.set(findNext(code, routes), clue);
  }
  return {
    ...content,
    stations: stations.map(({ clue: _, ...station }) =>
      clues.has(station.code) ? { ...station, clue: clues.get(station.code) } : station,
    ),
  };
};

/** The station that follows on the first route that goes on from this one; a route is taken as a circle. */
function findNext(code: unknown, routes: readonly unknown[][]): unknown {
  const route = routes.find((stops) => stops.includes(code) && stops.length > 1);
  return route?.[(route.indexOf(code) + 1) % route.length];
}

type Group = Readonly<Record<string, unknown>>;

function listGroups(value: unknown): Group[] {
  return Array.isArray(value)
    ? value.filter((item): item is Group => typeof item === 'object' && item !== null)
    : [];
}
