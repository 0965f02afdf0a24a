import type { Plan, SquadCode, StationCode } from '../../../src-core/lesson/plan.ts';

/** One slot of the rotation: where every squad is, and which stations stand empty. */
export interface RotationLine {
  readonly slot: number;
  /** Null: the squad's route is over. */
  readonly at: readonly { readonly squad: SquadCode; readonly station: StationCode | null }[];
  readonly free: readonly StationCode[];
  /** Stations that two squads and more come to in this slot. */
  readonly meeting: readonly StationCode[];
}

/** The rotation as a timetable: slots down, squads across. */
export function buildRotation({ squads, stations }: Plan): readonly RotationLine[] {
  return Array.from({ length: countSlots(squads) }, (_, slot) => {
    const at = squads.map(({ code, route }) => ({ squad: code, station: route[slot] ?? null }));
    const taken = at.flatMap(({ station }) => station ?? []);
    return {
      slot,
      at,
      free: stations.map(({ code }) => code).filter((code) => !taken.includes(code)),
      meeting: [...new Set(taken.filter((code, first) => taken.indexOf(code) !== first))],
    };
  });
}

/** How many slots the longest route has. */
export function countSlots(squads: Plan['squads']): number {
  return Math.max(0, ...squads.map(({ route }) => route.length));
}
