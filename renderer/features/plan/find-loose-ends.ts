import type { Plan } from '../../../src-core/lesson/plan.ts';
import type { Pupil } from '../../../src-core/lesson/roster.ts';
import type { LooseEnd } from '../../text/loose-end.ts';
import { BLANK } from './station-edits.ts';

/** What is still to be filled in before the lesson can be held, in the order of the sheet. */
export function findLooseEnds(plan: Plan, pupils: readonly Pick<Pupil, 'squad'>[]): readonly LooseEnd[] {
  return [...listStationEnds(plan), ...listSquadEnds(plan, pupils)];
}

function listStationEnds({ stations, squads, rotation }: Plan): readonly LooseEnd[] {
  const visited = new Set(squads.flatMap(({ route }) => route));
  return stations.flatMap(({ code, place, exercise }, at): LooseEnd[] => {
    const path = `stations[${at}]`;
    const isLoose = !visited.has(code) && !rotation.leftOut.includes(code);
    return [
      ...(place === BLANK ? [{ kind: 'no-place', station: code, path: `${path}.place` } as const] : []),
      ...(exercise === BLANK
        ? [{ kind: 'no-exercise', station: code, path: `${path}.exercise` } as const]
        : []),
      ...(isLoose ? [{ kind: 'on-no-route', station: code, path: 'rotation' } as const] : []),
    ];
  });
}

function listSquadEnds({ squads }: Plan, pupils: readonly Pick<Pupil, 'squad'>[]): readonly LooseEnd[] {
  if (pupils.length === 0) return [{ kind: 'no-pupils', path: 'squads' }];
  return squads.flatMap(({ code, name }, at) =>
    pupils.some(({ squad }) => squad === code)
      ? []
      : [{ kind: 'squad-empty' as const, squad: name, path: `squads[${at}]` }],
  );
}
