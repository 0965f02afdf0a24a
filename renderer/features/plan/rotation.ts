import type { Plan, SquadCode, StationCode } from '../../../src-core/lesson/plan.ts';

/** One slot of the rotation: where every squad is, and which stations stand empty. */
export interface RotationLine {
  readonly slot: number;
  /** Null: the squad's route is over. */
  readonly at: readonly { readonly squad: SquadCode; readonly station: StationCode | null }[];
  readonly free: readonly StationCode[];
}

/** The rotation as a timetable: slots down, squads across. */
export function buildRotation({ squads, stations }: Plan): readonly RotationLine[] {
  const slots = Math.max(...squads.map(({ route }) => route.length));
  return Array.from({ length: slots }, (_, slot) => {
    const at = squads.map(({ code, route }) => ({ squad: code, station: route[slot] ?? null }));
    const taken = new Set(at.map(({ station }) => station));
    return { slot, at, free: stations.map(({ code }) => code).filter((code) => !taken.has(code)) };
  });
}
