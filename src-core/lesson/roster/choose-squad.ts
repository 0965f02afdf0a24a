import type { Plan, SquadCode } from '../plan.ts';
import { findRosterSquad } from '../squad-name.ts';

/**
 * The squad for a pupil who is new: with those the rules keep together with them, else the smallest one that holds
 * nobody they are to be apart from, else the smallest. `squadOf` names squads as roster.csv does.
 */
export function chooseSquad(
  pupil: string,
  squadOf: ReadonlyMap<string, string>,
  { squads, grouping }: Pick<Plan, 'squads' | 'grouping'>,
): SquadCode {
  const read = (id: string) => findRosterSquad(squadOf.get(id) ?? '', squads)?.code ?? null;
  const others = (lists: readonly (readonly string[])[]) =>
    lists
      .filter((list) => list.includes(pupil))
      .flat()
      .filter((id) => id !== pupil);
  const friends = others(grouping.together).flatMap((id) => read(id) ?? []);
  const foes = new Set(others(grouping.apart).map(read));
  const sizes = new Map(squads.map(({ code }) => [code, 0]));
  for (const id of squadOf.keys()) {
    const squad = read(id);
    if (squad !== null) sizes.set(squad, (sizes.get(squad) ?? 0) + 1);
  }
  const bySize = [...sizes].sort(([, one], [, other]) => one - other).map(([code]) => code);
  return friends[0] ?? bySize.find((code) => !foes.has(code)) ?? bySize[0] ?? '';
}
