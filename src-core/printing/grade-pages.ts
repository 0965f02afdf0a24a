import type { OrderRule, Plan, SquadCode } from '../lesson/plan.ts';
import type { PupilScore, SquadScore } from '../marking/points.ts';
import type { SquadMark } from '../marking/squad-score.ts';
import type { GradeInput, SheetFlag } from './grade-input.ts';
import { buildGradeRows, type GradeRow } from './grade-rows.ts';
import { getPaperSquad, type PaperSquad } from './paper-pinnie.ts';
import { getPupilName } from './route-key.ts';
import { buildRouteWalk, type RouteWalk } from './route-walk.ts';
import type { Said } from './said.ts';

/** How far the whole lesson is settled: every page says the same, as every row of the sheet for the gradebook does. */
export interface SheetState {
  readonly isFinal: boolean;
  readonly unconfirmedClips: number;
  /** Marks of squads that are not given yet. */
  readonly squadMarks: number;
  readonly openFlags: number;
}

/** What stands over every page of a grade sheet. */
export interface SheetHead {
  readonly school: Said;
  readonly lesson: Said;
  /** `2025-05-15`. */
  readonly date: string;
  readonly period: string;
  readonly state: SheetState;
}

/** A squad on the class page. */
export interface ClassLine {
  readonly squad: PaperSquad;
  readonly walk: RouteWalk;
  readonly score: SquadScore;
  readonly flags: { readonly open: number; readonly settled: number };
}

/** A pupil's mark, in the roster's order: never sorted by points. */
export interface PupilLine {
  readonly name: Said;
  readonly squad: Said;
  readonly score: PupilScore;
}

/** The class page: every squad's route and walk, every pupil's mark. */
export interface ClassGrades {
  readonly kind: 'class-grades';
  readonly head: SheetHead;
  readonly squads: readonly ClassLine[];
  readonly pupils: readonly PupilLine[];
  /** Of each squad criterion, in the rubric's order. */
  readonly criteria: readonly Said[];
  readonly orderRule: OrderRule;
}

/** The page of one squad: its clips as filmed with answers, points and stills, its flags, its pupils. */
export interface SquadGrades {
  readonly kind: 'squad-grades';
  readonly head: SheetHead;
  readonly squad: PaperSquad;
  readonly walk: RouteWalk;
  /** Of each clip criterion, in the rubric's order. */
  readonly criteria: readonly Said[];
  readonly rows: readonly GradeRow[];
  readonly marks: readonly (SquadMark & { readonly label: Said })[];
  readonly score: SquadScore;
  readonly flags: readonly SheetFlag[];
  readonly pupils: readonly PupilLine[];
  readonly stills: 'shown' | 'blurred' | 'left-out';
  /** A pupil of the squad is on the do-not-film list, so that there are no stills; nobody is named. */
  readonly isOnList: boolean;
  readonly orderRule: OrderRule;
}

/** A whole grade sheet: the class first, then each squad. */
export interface GradePages {
  readonly classPage: ClassGrades;
  /** In the plan's order. */
  readonly squads: readonly SquadGrades[];
}

/** The pages of a grade sheet. A squad without any clip has its page all the same. */
export function buildGradePages(input: GradeInput): GradePages {
  const { plan, score } = input;
  const head = buildHead(input);
  const pupils = score.pupils.map((one) => buildPupilLine(plan, one));
  return {
    classPage: {
      kind: 'class-grades',
      head,
      squads: score.squads.map((one) => buildClassLine(input, one)),
      pupils,
      criteria: plan.rubric.squad.map(({ label }, at) => ({
        text: label,
        field: `rubric.squad[${at}].label`,
      })),
      orderRule: plan.orderRule,
    },
    squads: score.squads.map((one) => buildSquadGrades(input, one, { head, pupils })),
  };
}

function buildHead({ plan, score }: GradeInput): SheetHead {
  const { school, title, className, date, period } = plan.lesson;
  const slots = score.squads.flatMap((squad) => squad.slots);
  const marks = score.squads.flatMap(({ criteria }) => criteria);
  const openFlags = score.openFlags.length;
  return {
    school: { text: school, field: 'lesson.school' },
    lesson: { text: `${title}, ${className}`, field: 'lesson.title' },
    date,
    period,
    state: {
      isFinal: openFlags === 0 && score.pupils.every(({ state }) => state !== 'unconfirmed'),
      unconfirmedClips: slots.filter(({ clip }) => clip !== null && !clip.confirmed).length,
      squadMarks: marks.filter(({ decided }) => decided === null).length,
      openFlags,
    },
  };
}

function buildClassLine(input: GradeInput, score: SquadScore): ClassLine {
  const own = input.flags.filter(({ flag }) => flag.squad === score.squad);
  const open = own.filter(({ answer }) => answer === null).length;
  return {
    squad: getPaperSquad(input.plan, score.squad, input.order.isGrey),
    walk: buildRouteWalk(input.plan, score, getClips(input, score.squad)),
    score,
    flags: { open, settled: own.length - open },
  };
}

function buildSquadGrades(
  input: GradeInput,
  score: SquadScore,
  { head, pupils }: { readonly head: SheetHead; readonly pupils: readonly PupilLine[] },
): SquadGrades {
  const { plan, order } = input;
  const clips = getClips(input, score.squad);
  const hidden = new Set(input.unshown);
  const { rubric } = plan;
  return {
    kind: 'squad-grades',
    head,
    squad: getPaperSquad(plan, score.squad, order.isGrey),
    walk: buildRouteWalk(plan, score, clips),
    criteria: rubric.clip.map(({ label }, at) => ({ text: label, field: `rubric.clip[${at}].label` })),
    rows: buildGradeRows({ plan, score, clips, hidden, stills: order.stills }),
    marks: score.criteria.map((mark) => {
      const at = rubric.squad.findIndex(({ code }) => code === mark.criterion);
      const label = { text: rubric.squad[at]?.label ?? mark.criterion, field: `rubric.squad[${at}].label` };
      return { ...mark, label };
    }),
    score,
    flags: input.flags.filter(({ flag }) => flag.squad === score.squad),
    pupils: pupils.filter((line) => line.score.pupil.squad === score.squad),
    stills: order.stills,
    isOnList: hidden.has(score.squad),
    orderRule: plan.orderRule,
  };
}

function getClips({ squads }: GradeInput, code: SquadCode) {
  return squads.find((squad) => squad.code === code)?.clips ?? [];
}

function buildPupilLine(plan: Plan, score: PupilScore): PupilLine {
  const at = plan.squads.findIndex(({ code }) => code === score.pupil.squad);
  const squad = plan.squads[at]?.name ?? score.pupil.squad;
  return { name: getPupilName(score.pupil), squad: { text: squad, field: `squads[${at}].name` }, score };
}
