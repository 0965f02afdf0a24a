import type { Plan, SquadCode } from '../plan.ts';
import type { RouteOrder, RouteSuggestion } from './suggest-routes.ts';

/** What a plan asks of its routes: all that its `rotation` says, so that the same plan gets the same routes. */
export function buildRouteOrder({
  stations,
  squads,
  rotation,
}: Pick<Plan, 'stations' | 'squads' | 'rotation'>): RouteOrder {
  const { design, seed, leftOut, fixedStarts, forbidden, distances } = rotation;
  return {
    stations: stations.map(({ code }) => code).filter((code) => !leftOut.includes(code)),
    squads: squads.map(({ code }) => ({
      code,
      start: fixedStarts.find(({ squad }) => squad === code)?.station ?? null,
    })),
    design,
    seed,
    forbidden,
    distances,
  };
}

/** What is left of a rotation when some squads are no more: the fixed starts of those that stay. */
export function keepStarts(
  rotation: Plan['rotation'],
  squads: readonly { readonly code: SquadCode }[],
): Plan['rotation'] {
  const fixedStarts = rotation.fixedStarts.filter((start) => squads.some(({ code }) => code === start.squad));
  return { ...rotation, fixedStarts };
}

/** The plan with these routes in the place of its own; squads that none is for keep theirs. */
export function withRoutes(plan: Plan, { routes }: Pick<RouteSuggestion, 'routes'>): Plan {
  const found = new Map(routes.map(({ squad, route }) => [squad, route]));
  return {
    ...plan,
    squads: plan.squads.map((squad) => {
      const route = found.get(squad.code);
      return route ? { ...squad, startsAt: route[0] ?? squad.startsAt, route: [...route] } : squad;
    }),
  };
}
