import type { LessonSummary, SquadSummary } from '../marking/look-back/lesson-summary.ts';
import type { SquadScore } from '../marking/points.ts';
import type { SlotScore } from '../marking/squad-score.ts';
import type { FlagCode } from '../matching/flag.ts';
import { findShownMovement } from './clip-evidence.ts';
import type { GradedClip, GradedLesson, GradedSquad, RaisedFlag } from './graded-lesson.ts';

/** What looking back keeps of a graded lesson: figures of squads, with nothing of any one pupil. */
export function summariseLesson(graded: GradedLesson, unseen: number): LessonSummary {
  const { plan } = graded.lesson;
  const { code, title, school, className, date, period } = plan.lesson;
  const start = plan.periods.find((one) => one.code === period)?.start ?? '';
  const nameOf = (one: { readonly code: string; readonly label: string }) => ({
    code: one.code,
    label: one.label,
  });
  return {
    lesson: { code, title, school, className, date, period, start },
    criteria: plan.rubric.clip.map(nameOf),
    squadCriteria: plan.rubric.squad.map(nameOf),
    clips: graded.squads.reduce((sum, { clips }) => sum + clips.length, 0),
    unseen,
    squads: graded.squads.flatMap((squad) => {
      const score = graded.score.squads.find((one) => one.squad === squad.squad.code);
      return score ? [summariseSquad(graded, squad, score)] : [];
    }),
  };
}

function summariseSquad(
  graded: GradedLesson,
  { squad, clips }: GradedSquad,
  score: SquadScore,
): SquadSummary {
  const { plan, pupils } = graded.lesson;
  const ids = pupils.filter((pupil) => pupil.squad === squad.code).map(({ id }) => id);
  const filled = score.slots.filter(({ clip }) => clip !== null);
  return {
    code: squad.code,
    name: squad.name,
    pinnie: squad.pinnie,
    makeUp: describeMakeUp(ids),
    slots: score.slots.length,
    clips: filled.length,
    points: score.sum.points,
    max: score.sum.max,
    isConfirmed: isConfirmed(score),
    answers: plan.rubric.clip.map(({ code }) => countAnswers(code, filled)),
    marks: score.criteria.map(({ criterion, decided, max }) => ({ criterion, points: decided, max })),
    flags: countFlags(graded.flags.filter(({ flag, asks }) => asks && flag.squad === squad.code)),
    reps: countShort(graded, clips, filled),
    unison: listUnison(graded, clips, filled),
  };
}

function isConfirmed({ slots, criteria, openFlags }: SquadScore): boolean {
  return (
    openFlags.length === 0 &&
    slots.every(({ clip }) => clip === null || clip.confirmed) &&
    criteria.every(({ decided }) => decided !== null)
  );
}

function countAnswers(criterion: string, filled: readonly SlotScore[]): SquadSummary['answers'][number] {
  const marks = filled.flatMap(
    ({ clip }) => clip?.criteria.filter((one) => one.criterion === criterion) ?? [],
  );
  const amount = (shown: boolean | null, confirmed: boolean) =>
    marks.filter((mark) => mark.shown === shown && mark.confirmed === confirmed).length;
  return {
    criterion,
    metByTeacher: amount(true, true),
    metByMachine: amount(true, false),
    notMetByTeacher: amount(false, true),
    notMetByMachine: amount(false, false),
    open: amount(null, false),
  };
}

function countFlags(flags: readonly RaisedFlag[]): SquadSummary['flags'] {
  const codes = [...new Set(flags.map(({ flag }): FlagCode => flag.code))].sort();
  return codes.map((code) => {
    const answers = flags
      .filter(({ flag }) => flag.code === code)
      .map(({ answer }) => answer?.settled ?? 'open');
    const amount = (state: string) => answers.filter((one) => one === state).length;
    return { code, open: amount('open'), kept: amount('kept'), cleared: amount('cleared') };
  });
}

function countShort(
  { lesson: { plan } }: GradedLesson,
  clips: readonly GradedClip[],
  filled: readonly SlotScore[],
): SquadSummary['reps'] {
  const checking = plan.rubric.clip.filter(({ checks }) => checks === 'reps').map(({ code }) => code);
  const told = filled.flatMap(({ clip, station }) => {
    const answers = clip?.criteria.filter(({ criterion }) => checking.includes(criterion)) ?? [];
    const decided = answers.map((one) => one.decided).filter((one) => one !== null);
    if (decided.length > 0) return [{ short: decided.includes(false), byTeacher: true }];
    const asked = plan.stations.find(({ code }) => code === station)?.reps;
    const movement = findMovement(plan, clips, { clip, station });
    if (!movement || asked === undefined) return [];
    return [{ short: (movement.reps.count ?? 0) < asked, byTeacher: false }];
  });
  return {
    told: told.length,
    toldByTeacher: told.filter(({ byTeacher }) => byTeacher).length,
    short: told.filter(({ short }) => short).length,
  };
}

function listUnison(
  { lesson: { plan } }: GradedLesson,
  clips: readonly GradedClip[],
  filled: readonly SlotScore[],
): SquadSummary['unison'] {
  return filled.flatMap((slot) => {
    const score = findMovement(plan, clips, slot)?.unison?.score;
    return score === undefined ? [] : [Math.round(Math.min(1, Math.max(0, score)) * 100) / 100];
  });
}

function findMovement(
  plan: GradedLesson['lesson']['plan'],
  clips: readonly GradedClip[],
  { clip, station }: Pick<SlotScore, 'clip' | 'station'>,
) {
  const graded = clips.find(({ reading }) => reading.id === clip?.clip);
  return graded ? findShownMovement(graded.reading.evidence, plan, station) : null;
}

/** FNV-1a over the ids in order, cut to sixteen bits: enough to see a change, far too little to name anybody. */
function describeMakeUp(ids: readonly string[]): string {
  let hash = 0x811c9dc5;
  for (const letter of ids.toSorted().join('\n')) {
    hash = Math.imul(hash ^ (letter.codePointAt(0) ?? 0), 0x01000193);
  }
  return ((hash ^ (hash >>> 16)) & 0xffff).toString(16).padStart(4, '0');
}
