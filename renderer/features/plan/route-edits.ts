import type { Plan, SlotIndex, SquadCode, StationCode } from '../../../src-core/lesson/plan.ts';
import type { PlanEdit } from './plan-edit.ts';

/**
 * A squad at another station in one slot. Where its route comes to that station already, the two slots change
 * places, so that it still visits each station once.
 */
export function changeStop(code: SquadCode, slot: SlotIndex, station: StationCode): PlanEdit {
  return ({ squads }) => ({
    squads: squads.map((squad) => {
      const before = squad.route[slot];
      if (squad.code !== code || before === undefined) return squad;
      const elsewhere = squad.route.indexOf(station);
      const swapped = elsewhere < 0 ? squad.route : squad.route.with(elsewhere, before);
      return walk(squad, swapped.with(slot, station));
    }),
  });
}

/** Other wishes for how routes are made. */
export function changeRotation(change: Partial<Plan['rotation']>): PlanEdit {
  return ({ rotation }) => ({ rotation: { ...rotation, ...change } });
}

/** Where a squad must begin, whatever else would be shorter; null: anywhere. */
export function changeStart(squad: SquadCode, station: StationCode | null): PlanEdit {
  return ({ rotation }) => {
    const others = rotation.fixedStarts.filter((start) => start.squad !== squad);
    const fixedStarts = station === null ? others : [...others, { squad, station }];
    return { rotation: { ...rotation, fixedStarts } };
  };
}

/** Takes a station out of the rotation, or back into it. */
export function toggleLeftOut(station: StationCode): PlanEdit {
  return ({ rotation }) => {
    const { leftOut } = rotation;
    const isOut = leftOut.includes(station);
    const changed = isOut ? leftOut.filter((code) => code !== station) : [...leftOut, station];
    return { rotation: { ...rotation, leftOut: changed } };
  };
}

/** A leg that nobody may walk; already forbidden or to the same place, nothing changes. */
export function forbidLeg(from: StationCode, to: StationCode): PlanEdit {
  return ({ rotation }) => {
    const isKnown = rotation.forbidden.some(([one, other]) => one === from && other === to);
    if (isKnown || from === to) return {};
    return { rotation: { ...rotation, forbidden: [...rotation.forbidden, [from, to]] } };
  };
}

/** The leg may be walked again. */
export function allowLeg(from: StationCode, to: StationCode): PlanEdit {
  return ({ rotation }) => ({
    rotation: {
      ...rotation,
      forbidden: rotation.forbidden.filter(([one, other]) => one !== from || other !== to),
    },
  });
}

/** How far two places are from each other, in metres; null: not known. */
export function changeDistance(one: StationCode, other: StationCode, metres: number | null): PlanEdit {
  return ({ rotation }) => {
    const rest = rotation.distances.filter(
      ({ between }) => !(between.includes(one) && between.includes(other)),
    );
    const distances =
      metres === null ? rest : [...rest, { between: [one, other] as [string, string], metres }];
    return { rotation: { ...rotation, distances } };
  };
}

function walk(squad: Plan['squads'][number], route: StationCode[]): Plan['squads'][number] {
  return { ...squad, route, startsAt: route[0] ?? squad.startsAt };
}
