import type { Plan, Squad, SquadCode } from '../../../src-core/lesson/plan.ts';
import { keepStarts } from '../../../src-core/lesson/routes/plan-routes.ts';
import { buildSquadSigns } from '../../../src-core/lesson/squads/pinnies.ts';
import type { PlanEdit } from './plan-edit.ts';

/** One more squad in the first pinnie that nobody wears; its route is the round of the stations from the next start. */
export const addSquad: PlanEdit = ({ squads, stations }) => {
  const signs = buildSquadSigns(squads.length + 1, squads).at(-1);
  const codes = stations.map(({ code }) => code);
  const turn = squads.length % Math.max(1, codes.length);
  const route = [...codes.slice(turn), ...codes.slice(0, turn)];
  const [startsAt] = route;
  return signs && startsAt !== undefined ? { squads: [...squads, { ...signs, startsAt, route }] } : {};
};

/** Without a squad; the last one stays. Its pupils have to be in other squads first. */
export function removeSquad(code: SquadCode): PlanEdit {
  return (plan) =>
    plan.squads.length < 2 ? {} : takeSquads(plan.squads.filter((squad) => squad.code !== code))(plan);
}

/** These squads in the place of those there are; fixed starts of squads that are gone go with them. */
export function takeSquads(squads: Plan['squads']): PlanEdit {
  return ({ rotation }) => ({ squads, rotation: keepStarts(rotation, squads) });
}

/** A squad with some fields otherwise. */
export function changeSquad(code: SquadCode, change: Partial<Squad>): PlanEdit {
  return ({ squads }) => ({
    squads: squads.map((squad) => (squad.code === code ? { ...squad, ...change } : squad)),
  });
}

/** Another wish for how squads are formed. */
export function changeGrouping(change: Partial<Plan['grouping']>): PlanEdit {
  return ({ grouping }) => ({ grouping: { ...grouping, ...change } });
}

/** Pupils who are kept apart, or stay together, when squads are formed; a rule that is there is not repeated. */
export function addGroupingRule(kind: 'apart' | 'together', pupils: readonly string[]): PlanEdit {
  return ({ grouping }) => {
    const rule = [...pupils].sort();
    const isKnown = grouping[kind].some((other) => [...other].sort().join('\n') === rule.join('\n'));
    if (isKnown || rule.length < 2) return {};
    return { grouping: { ...grouping, [kind]: [...grouping[kind], rule] } };
  };
}

/** Without a rule, by its place among those of its kind. */
export function removeGroupingRule(kind: 'apart' | 'together', at: number): PlanEdit {
  return ({ grouping }) => ({
    grouping: { ...grouping, [kind]: grouping[kind].filter((_, each) => each !== at) },
  });
}
