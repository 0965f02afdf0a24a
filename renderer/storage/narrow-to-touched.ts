import type { LessonView } from '../../src-core/contract/lesson-view.ts';
import type { SquadCode } from '../../src-core/lesson/plan.ts';
import type { JournalDecision } from '../../src-core/marking/journal-event.ts';

/**
 * A view with the squads alone whose marks these decisions can change, and the clips and flags that they name: marks of
 * one squad depend on another's by a flag alone that is about a clip of theirs. The rest need not be added up, compared
 * and painted anew for a key.
 */
export function narrowToTouched(view: LessonView, acts: readonly JournalDecision[]): LessonView {
  const clips = new Set(acts.flatMap((act) => listClips(act)));
  const flags = new Set(acts.flatMap((act) => (act.kind === 'flag-settled' ? [act.flag] : [])));
  const squads = new Set<SquadCode | null>([
    ...acts.flatMap((act) => listSquads(view, act)),
    ...view.flags.flatMap(({ key, flag }) => (flags.has(key) ? [flag.squad] : [])),
  ]);
  const settled = new Set(view.flags.flatMap(({ key, flag }) => (flags.has(key) ? [flag.clip] : [])));
  for (const { id, squad } of view.clips) if (clips.has(id) || settled.has(id)) squads.add(squad);
  const own = new Set<string | null>(view.clips.flatMap(({ id, squad }) => (squads.has(squad) ? [id] : [])));
  return {
    ...view,
    pupils: view.pupils.filter(({ squad }) => squads.has(squad)),
    clips: view.clips.filter(({ id, squad }) => clips.has(id) || squads.has(squad)),
    flags: view.flags.filter(
      ({ key, flag }) => flags.has(key) || squads.has(flag.squad) || own.has(flag.clip),
    ),
    squadScores: view.squadScores.filter(({ squad }) => squads.has(squad)),
    pupilScores: view.pupilScores.filter(({ pupil }) => squads.has(pupil.squad)),
  };
}

/** The whole view with what has become of its narrowed part. */
export function putBack(view: LessonView, part: LessonView): LessonView {
  return {
    ...view,
    clips: putAll(view.clips, part.clips, ({ id }) => id),
    flags: putAll(view.flags, part.flags, ({ key }) => key),
    squadScores: putAll(view.squadScores, part.squadScores, ({ squad }) => squad),
    pupilScores: putAll(view.pupilScores, part.pupilScores, ({ pupil }) => pupil.id),
  };
}

function putAll<Item>(
  all: readonly Item[],
  some: readonly Item[],
  getKey: (item: Item) => string,
): readonly Item[] {
  const known = new Map(some.map((item) => [getKey(item), item]));
  const put = all.map((item) => known.get(getKey(item)) ?? item);
  return put.every((item, at) => item === all[at]) ? all : put;
}

function listClips(act: JournalDecision): readonly string[] {
  if ('clip' in act) return [act.clip];
  return act.kind === 'points-overridden' && act.of.type === 'clip' ? [act.of.clip] : [];
}

function listSquads({ pupils }: LessonView, act: JournalDecision): readonly SquadCode[] {
  if (act.kind === 'squad-marked' || act.kind === 'clock-set') return [act.squad];
  const ofPupil = (id: string) => pupils.filter((pupil) => pupil.id === id).map(({ squad }) => squad);
  if (act.kind === 'attendance-set') return ofPupil(act.pupil);
  if (act.kind !== 'points-overridden') return [];
  if (act.of.type === 'squad') return [act.of.squad];
  return act.of.type === 'pupil' ? ofPupil(act.of.pupil) : [];
}
