import type { Plan, SquadCode, StationCode } from '../lesson/plan.ts';
import type { Pupil } from '../lesson/roster.ts';
import { getPaperSquad, type PaperSquad } from './paper-pinnie.ts';
import { getHeading, type Said } from './said.ts';

/** For the teacher alone: who is where in which slot, and who must not be shown. */
export interface RouteKey {
  readonly kind: 'route-key';
  readonly heading: Said;
  readonly squads: readonly PaperSquad[];
  /** For each slot, where each of `squads` is (null: its route is over) and which stations stand empty. */
  readonly slots: readonly {
    readonly at: readonly ({ readonly code: StationCode; readonly place: Said } | null)[];
    readonly free: readonly StationCode[];
  }[];
  /** Pupils on the do-not-film list, by squad; on the first key alone. Null: said on the first. */
  readonly notShown: readonly { readonly squad: Said; readonly pupils: readonly Said[] }[] | null;
}

/** Squads side by side on one key. */
const SQUADS_A_PAGE = 8;

/** The keys, one for every eight squads. */
export function buildRouteKeys(plan: Plan, pupils: readonly Pupil[], isGrey: boolean): readonly RouteKey[] {
  const keys: RouteKey[] = [];
  for (let from = 0; from < plan.squads.length; from += SQUADS_A_PAGE) {
    const squads = plan.squads.slice(from, from + SQUADS_A_PAGE);
    keys.push({
      kind: 'route-key',
      heading: getHeading(plan),
      squads: squads.map(({ code }) => getPaperSquad(plan, code, isGrey)),
      slots: buildSlots(
        plan,
        squads.map(({ code }) => code),
      ),
      notShown: from === 0 ? listNotShown(plan, pupils) : null,
    });
  }
  return keys;
}

function buildSlots(plan: Plan, squads: readonly SquadCode[]): RouteKey['slots'] {
  const count = Math.max(...plan.squads.map(({ route }) => route.length));
  return Array.from({ length: count }, (_, slot) => {
    const taken = new Set(plan.squads.map(({ route }) => route[slot]));
    return {
      at: squads.map((squad) => {
        const code = plan.squads.find((each) => each.code === squad)?.route[slot];
        const at = plan.stations.findIndex((station) => station.code === code);
        const found = plan.stations[at];
        if (!found) return null;
        return { code: found.code, place: { text: found.place, field: `stations[${at}].place` } };
      }),
      free: plan.stations.map(({ code }) => code).filter((code) => !taken.has(code)),
    };
  });
}

function listNotShown(plan: Plan, pupils: readonly Pupil[]): RouteKey['notShown'] {
  return plan.squads
    .map(({ code, name }, at) => ({
      squad: { text: name, field: `squads[${at}].name` },
      pupils: pupils.filter(({ squad, stills }) => squad === code && !stills).map(getPupilName),
    }))
    .filter((squad) => squad.pupils.length > 0);
}

/** A pupil's name as paper has it; the field is the roster's id. */
export function getPupilName({ id, given, family }: Pupil): Said {
  return { text: `${given} ${family}`, field: `roster ${id}` };
}
