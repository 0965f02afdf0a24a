import type { PupilGroup } from './join-together.ts';

/** Which squad each group goes to, in the order of the groups; or that there is no way, or none was found. */
export type Placing =
  | { readonly kind: 'found'; readonly squadOf: readonly number[] }
  | { readonly kind: 'none' | 'unknown' };

/** What a placing must keep to. */
export interface PlacingOrder {
  /** In the order in which they are placed. */
  readonly groups: readonly PupilGroup[];
  readonly squads: number;
  /** Fewest and most pupils of a squad. */
  readonly sizes: readonly [least: number, most: number];
  /** Groups, by place in the list, that may not share a squad with this one. */
  readonly foes: readonly (readonly number[])[];
}

/** How many steps are tried before the search gives up; a class of forty-five takes some dozens without hard rules. */
const MOST_STEPS = 60_000;

/**
 * Places groups one after the other, always the one with fewest squads left to it, into the emptiest squad that
 * takes it, and goes back where none does. Depth first, so `none` is a proof.
 */
export function placeGroups(order: PlacingOrder): Placing {
  const { groups, squads, sizes } = order;
  const total = groups.reduce((sum, { length }) => sum + length, 0);
  if (total < squads * sizes[0] || total > squads * sizes[1]) return { kind: 'none' };
  const state: PlacingState = {
    squadOf: groups.map(() => -1),
    filled: new Array<number>(squads).fill(0),
    left: total,
    steps: 0,
  };
  if (placeRest(order, state)) return { kind: 'found', squadOf: state.squadOf };
  return { kind: state.steps > MOST_STEPS ? 'unknown' : 'none' };
}

interface PlacingState {
  readonly squadOf: number[];
  readonly filled: number[];
  /** Pupils who have no squad yet. */
  left: number;
  steps: number;
}

function placeRest(order: PlacingOrder, state: PlacingState): boolean {
  const { squadOf, filled } = state;
  state.steps += 1;
  if (state.steps > MOST_STEPS || isShort(order, state)) return false;
  const next = chooseNext(order, state);
  if (next === null) return true;
  const size = order.groups[next.group]?.length ?? 0;
  for (const squad of next.squads) {
    squadOf[next.group] = squad;
    filled[squad] = (filled[squad] ?? 0) + size;
    state.left -= size;
    if (placeRest(order, state)) return true;
    state.left += size;
    filled[squad] = (filled[squad] ?? 0) - size;
    squadOf[next.group] = -1;
  }
  return false;
}

/** Whether too few pupils are left to bring every squad to its least size. */
function isShort({ sizes: [least] }: PlacingOrder, { filled, left }: PlacingState): boolean {
  return filled.reduce((sum, size) => sum + Math.max(0, least - size), 0) > left;
}

/** The group with fewest squads left to it, the larger of two alike; null when all are placed. */
function chooseNext(
  order: PlacingOrder,
  state: PlacingState,
): { readonly group: number; readonly squads: readonly number[] } | null {
  let best: { group: number; squads: readonly number[] } | null = null;
  for (const [group, pupils] of order.groups.entries()) {
    if (state.squadOf[group] !== -1) continue;
    const squads = listSquads(order, state, group);
    const isTighter =
      best === null ||
      squads.length < best.squads.length ||
      (squads.length === best.squads.length && pupils.length > (order.groups[best.group]?.length ?? 0));
    if (isTighter) best = { group, squads };
  }
  return best;
}

/** Squads that take a group, emptiest first; of empty ones without a past, which are all alike, the first alone. */
function listSquads(
  order: PlacingOrder,
  { squadOf, filled }: PlacingState,
  group: number,
): readonly number[] {
  const foes = new Set((order.foes[group] ?? []).map((foe) => squadOf[foe] ?? -1));
  const size = order.groups[group]?.length ?? 0;
  const firstEmpty = filled.indexOf(0);
  return [...filled.keys()]
    .filter(
      (squad) =>
        !foes.has(squad) &&
        (filled[squad] ?? 0) + size <= order.sizes[1] &&
        ((filled[squad] ?? 0) > 0 || squad === firstEmpty),
    )
    .sort((one, other) => (filled[one] ?? 0) - (filled[other] ?? 0));
}
