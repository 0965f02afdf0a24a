import { fail, type Outcome, succeed } from '../../platform/outcome.ts';
import { seededRandom } from '../../platform/seeded-random.ts';
import type { Plan } from '../plan.ts';
import { shuffle } from '../routes/search-order.ts';
import { joinTogether, type PupilGroup } from './join-together.ts';
import { buildSquadSigns, type SquadSigns } from './pinnies.ts';
import { type Placing, placeGroups } from './place-groups.ts';
import type { GroupingRule, SquadsProblem } from './squads-problem.ts';

/** What squads are to be made of. */
export interface SquadsOrder {
  /** Pupils' ids; who is first does not matter, the seed draws. */
  readonly pupils: readonly string[];
  /** How many squads. */
  readonly count: number;
  /** Squads that are there already keep their names, pinnies and tablets. */
  readonly present: readonly SquadSigns[];
  readonly grouping: Pick<Plan['grouping'], 'seed' | 'apart' | 'together'>;
}

/** A squad as suggested: its signs and its pupils' ids, in the roster's order. */
export interface SuggestedSquad extends SquadSigns {
  readonly pupils: readonly string[];
}

/** How much further apart squads' sizes may grow where rules for together ask for it. */
const MOST_UNEVEN = 6;

/**
 * Squads of sizes that differ by one at most, drawn by the seed under the teacher's rules; sizes differ by more only
 * where the rules leave nothing else, and then a problem says so. Nothing is known of a pupil here but the id: no
 * strength, no sex, no name.
 */
export function suggestSquads(order: SquadsOrder): Outcome<readonly SuggestedSquad[], SquadsProblem> {
  const { pupils, count, grouping } = order;
  if (pupils.length === 0) return fail({ code: 'squads-without-pupils' });
  if (count > pupils.length) return fail({ code: 'squads-too-many', squads: count, pupils: pupils.length });
  const unknown = findUnknown(order);
  const rules = listRules(grouping);
  const contradiction = findContradiction(pupils, rules);
  if (contradiction) return fail(contradiction, ...unknown);
  const placed = place(order, rules);
  if (placed.kind !== 'found') {
    const reason: SquadsProblem =
      placed.kind === 'none'
        ? { code: 'squads-rules-too-many', rules: blame(order, rules) }
        : { code: 'squads-not-found' };
    return fail(reason, ...unknown);
  }
  const signs = buildSquadSigns(count, order.present);
  const squads = signs.map((sign, at) => ({
    ...sign,
    pupils: pupils.filter((pupil) => placed.squadOf.get(pupil) === at),
  }));
  const sizes = squads.map((squad) => squad.pupils.length);
  const [smallest, largest] = [Math.min(...sizes), Math.max(...sizes)];
  const uneven: SquadsProblem[] =
    largest - smallest > 1 ? [{ code: 'squads-uneven', smallest, largest }] : [];
  return succeed<readonly SuggestedSquad[], SquadsProblem>(squads, [...unknown, ...uneven]);
}

function listRules({ apart, together }: SquadsOrder['grouping']): readonly GroupingRule[] {
  return [
    ...together.map((list): GroupingRule => ({ kind: 'together', pupils: list })),
    ...apart.map((list): GroupingRule => ({ kind: 'apart', pupils: list })),
  ];
}

function findUnknown({ pupils, grouping }: SquadsOrder): readonly SquadsProblem[] {
  const named = new Set([...grouping.apart, ...grouping.together].flat());
  return [...named]
    .filter((pupil) => !pupils.includes(pupil))
    .map((pupil) => ({ code: 'squads-pupil-unknown', pupil }));
}

function pick(rules: readonly GroupingRule[], kind: GroupingRule['kind']) {
  return rules.filter((rule) => rule.kind === kind).map((rule) => rule.pupils);
}

function findContradiction(pupils: readonly string[], rules: readonly GroupingRule[]): SquadsProblem | null {
  const groups = joinTogether(pupils, pick(rules, 'together'));
  for (const apart of pick(rules, 'apart')) {
    for (const group of groups) {
      const [one, other] = apart.filter((pupil) => group.includes(pupil));
      if (one !== undefined && other !== undefined) {
        return { code: 'squads-rules-contradict', pupils: [one, other], together: group };
      }
    }
  }
  return null;
}

type PlacedPupils =
  | { readonly kind: 'found'; readonly squadOf: ReadonlyMap<string, number> }
  | { readonly kind: 'none' | 'unknown' };

function place({ pupils, count, grouping }: SquadsOrder, rules: readonly GroupingRule[]): PlacedPupils {
  const random = seededRandom(grouping.seed);
  const groups = joinTogether(shuffle(pupils, random), pick(rules, 'together'));
  const foes = findFoes(groups, pick(rules, 'apart'));
  const [floor, ceiling] = [Math.floor(pupils.length / count), Math.ceil(pupils.length / count)];
  let found: Placing = { kind: 'none' };
  for (let uneven = 0; uneven <= MOST_UNEVEN && found.kind !== 'found'; uneven += 1) {
    const sizes = [Math.max(1, floor - uneven), ceiling + uneven] as const;
    const placing = placeGroups({ groups, squads: count, sizes, foes });
    found = placing.kind === 'none' && found.kind === 'unknown' ? found : placing;
  }
  if (found.kind !== 'found') return found;
  const { squadOf } = found;
  // Which of the squads is which is drawn too: otherwise the largest group would always wear the first pinnie.
  const names = shuffle([...Array(count).keys()], random);
  const entries = groups.flatMap((group, at) =>
    group.map((pupil) => [pupil, names[squadOf[at] ?? 0] ?? 0] as const),
  );
  return { kind: 'found', squadOf: new Map(entries) };
}

function findFoes(groups: readonly PupilGroup[], apart: readonly (readonly string[])[]): number[][] {
  const groupOf = new Map(groups.flatMap((group, at) => group.map((pupil) => [pupil, at] as const)));
  const foes = groups.map(() => new Set<number>());
  for (const list of apart) {
    const places = list.flatMap((pupil) => groupOf.get(pupil) ?? []);
    for (const one of places) for (const other of places) if (one !== other) foes[one]?.add(other);
  }
  return foes.map((set) => [...set]);
}

/** Rules that, each by itself, cannot be kept as long as the others stand. */
function blame(order: SquadsOrder, all: readonly GroupingRule[]): readonly GroupingRule[] {
  let rules = all;
  for (const rule of all) {
    const others = rules.filter((one) => one !== rule);
    if (place(order, others).kind === 'none') rules = others;
  }
  return rules;
}
