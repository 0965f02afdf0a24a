import type { Plan } from '../lesson/plan.ts';
import type { Pupil } from '../lesson/roster.ts';
import type { JournalAct } from '../marking/journal-event.ts';

/**
 * Where a decision names something that plan and roster do not have, such as `criterion`; null where all is known.
 * Clips and flags are not looked up: what was decided while the clips were read, or of a clip on a stick that is
 * not plugged in, is a decision all the same.
 */
export function findMeaninglessPart(act: JournalAct, plan: Plan, pupils: readonly Pupil[]): string | null {
  const named = listNames(act);
  const codes = {
    squad: plan.squads.map(({ code }) => code),
    station: plan.stations.map(({ code }) => code),
    criterion: plan.rubric.clip.map(({ code }) => code),
    squadCriterion: plan.rubric.squad.map(({ code }) => code),
    pupil: pupils.map(({ id }) => id),
  };
  for (const [kind, names] of Object.entries(named)) {
    if (names.some((name) => !codes[kind as keyof typeof codes].includes(name))) return kind;
  }
  return null;
}

type Names = Partial<
  Record<'squad' | 'station' | 'criterion' | 'squadCriterion' | 'pupil', readonly string[]>
>;

function listNames(act: JournalAct): Names {
  switch (act.kind) {
    case 'station-set':
      return { station: listOne(act.station) };
    case 'clip-moved':
      return { squad: listOne(act.squad) };
    case 'clock-set':
      return { squad: [act.squad] };
    case 'criterion-marked':
      return { criterion: [act.criterion] };
    case 'clip-confirmed':
      return { criterion: Object.keys(act.answers) };
    case 'squad-marked':
      return { squad: [act.squad], squadCriterion: [act.criterion] };
    case 'attendance-set':
      return { pupil: [act.pupil] };
    case 'points-overridden':
      return listOverridden(act.of);
    default:
      return {};
  }
}

function listOverridden(of: Extract<JournalAct, { kind: 'points-overridden' }>['of']): Names {
  if (of.type === 'pupil') return { pupil: [of.pupil] };
  return of.type === 'squad' ? { squad: [of.squad] } : {};
}

function listOne(name: string | null): readonly string[] {
  return name === null ? [] : [name];
}
