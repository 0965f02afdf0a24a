import type { Plan, Squad, SquadCode } from '../../../src-core/lesson/plan.ts';
import { BIB_NAMES } from '../../text/english/plan-squads.ts';
import type { PlanEdit } from './plan-draft.ts';

/** The pinnies offered first, each with a colour that can be told from the others. */
export const PINNIES = [
  { code: 'teal', colour: '#1F8A86' },
  { code: 'amber', colour: '#E9A92B' },
  { code: 'plum', colour: '#8A4A86' },
  { code: 'moss', colour: '#6F8B3A' },
  { code: 'slate', colour: '#7C93A8' },
  { code: 'coral', colour: '#E0705C' },
  { code: 'navy', colour: '#2F4A7D' },
  { code: 'chalk', colour: '#E9E4D4' },
] as const;

/** One more squad in the first pinnie that nobody wears, on the longest route, turned so that it starts apart. */
export const addSquad: PlanEdit = (plan) => {
  const { squads, stations } = plan;
  const worn = new Set(squads.flatMap(({ code, pinnie }) => [code, pinnie.name.toLowerCase()]));
  const free = PINNIES.find(({ code }) => !worn.has(code) && !worn.has(BIB_NAMES[code].toLowerCase()));
  const number = squads.length + 1;
  const name = free ? BIB_NAMES[free.code] : String(number);
  const all = stations.map(({ code }) => code);
  const turn = squads.length % Math.max(1, all.length);
  const route = [...all.slice(turn), ...all.slice(0, turn)];
  const squad: Squad = {
    code: free?.code ?? `squad-${number}`,
    name,
    pinnie: { name: name.toLowerCase(), colour: free?.colour ?? '#8A8A8A' },
    tablet: `Tablet ${number}`,
    startsAt: route[0] ?? '',
    route,
  };
  return { squads: [...squads, squad] };
};

/** Without a squad; the last one stays. */
export function removeSquad(code: SquadCode): PlanEdit {
  return ({ squads }) => (squads.length < 2 ? {} : { squads: squads.filter((squad) => squad.code !== code) });
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
