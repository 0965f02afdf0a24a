/** Pupils who stay together, as one; a pupil without such a rule is a group alone. */
export type PupilGroup = readonly string[];

/** Joins lists that share a pupil; pupils in the order given, groups by their first pupil. */
export function joinTogether(
  pupils: readonly string[],
  together: readonly (readonly string[])[],
): readonly PupilGroup[] {
  const leaders = new Map(pupils.map((pupil) => [pupil, pupil]));
  const getLeader = (pupil: string): string => {
    const leader = leaders.get(pupil) ?? pupil;
    return leader === pupil ? pupil : getLeader(leader);
  };
  for (const list of together) {
    const known = list.filter((pupil) => leaders.has(pupil));
    for (const pupil of known) leaders.set(getLeader(pupil), getLeader(known[0] ?? pupil));
  }
  const groups = new Map<string, string[]>();
  for (const pupil of pupils) {
    const leader = getLeader(pupil);
    const group = groups.get(leader);
    if (group) group.push(pupil);
    else groups.set(leader, [pupil]);
  }
  return [...groups.values()];
}
