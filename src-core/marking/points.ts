import type { OrderRule, SlotIndex } from '../lesson/plan.ts';
import type { Pupil } from '../lesson/roster.ts';
import { type AttendanceWord, getOverrideKey, type Override } from './decisions.ts';
import { ORDER_RULES } from './order-rule.ts';
import { getAttendance, getPresence, type Presence, type PresenceNote } from './presence.ts';
import type { FlagRef, ScoreInput, SquadResult } from './score-input.ts';
import { findPercent, findScaleMark } from './share.ts';
import { buildSquadSheet, findOpenFlags, type SquadSheet } from './squad-score.ts';
import { addPoints, type Sum, type SumInput } from './sum.ts';

/** A sum under each order rule, side by side. */
export type SumByRule = Readonly<Record<OrderRule, Sum>>;

/** A squad's points, as a pupil who was there throughout earns them before overrides of their own. */
export interface SquadScore extends SquadSheet {
  /** Under the plan's rule. */
  readonly sum: Sum;
  readonly byRule: SumByRule;
  readonly percent: number | null;
  readonly scale: string | null;
}

/**
 * How far a pupil's mark can be trusted: `confirmed` only where a person stands behind every answer that counts,
 * and no flag of the squad is open. Absent and excused pupils have no mark.
 */
export type PupilState = 'confirmed' | 'unconfirmed' | 'absent' | 'excused';

/** A pupil's mark with all that explains it: which slots count, where each point came from, what is still open. */
export interface PupilScore {
  readonly pupil: Pupil;
  readonly attendance: AttendanceWord;
  readonly state: PupilState;
  /** Null for absent and excused pupils, and where the pupil's squad has no route to mark. */
  readonly sum: Sum | null;
  readonly byRule: SumByRule | null;
  /** Whole per cent; null without a mark, or where nothing could be earned. */
  readonly percent: number | null;
  readonly scale: string | null;
  /** The slots that count for the pupil. */
  readonly slots: readonly SlotIndex[];
  readonly notes: readonly PresenceNote[];
  readonly override: Override | null;
  /** Answers that count for the pupil and are nobody's yet. */
  readonly unconfirmed: number;
  readonly openFlags: number;
}

/** The marks of a lesson as they stand. */
export interface LessonScore {
  readonly squads: readonly SquadScore[];
  /** In the order of the roster. */
  readonly pupils: readonly PupilScore[];
  readonly openFlags: readonly FlagRef[];
}

/**
 * The marks of a lesson: a pure fold of what the machine proposes and what the teacher decided. What is neither
 * proposed nor decided earns nothing and is unconfirmed.
 */
export function scoreLesson(input: ScoreInput): LessonScore {
  const sheets = new Map(input.squads.map((squad) => [squad.squad, buildSquadSheet(input, squad)]));
  return {
    squads: [...sheets.values()].map((sheet) => scoreSquad(input, sheet)),
    pupils: input.pupils.map((pupil) => {
      const result = input.squads.find(({ squad }) => squad === pupil.squad);
      return scorePupil(input, pupil, { result, sheet: sheets.get(pupil.squad) });
    }),
    openFlags: findOpenFlags(input),
  };
}

function scoreSquad({ plan }: ScoreInput, sheet: SquadSheet): SquadScore {
  const byRule = addByRule({
    slots: sheet.slots,
    criteria: sheet.criteria,
    overrides: sheet.override ? [{ of: 'squad', override: sheet.override }] : [],
  });
  const sum = byRule[plan.orderRule];
  const percent = findPercent(sum.points, sum.max);
  return { ...sheet, sum, byRule, percent, scale: findScaleMark(percent, plan.scale) };
}

function scorePupil(
  input: ScoreInput,
  pupil: Pupil,
  of: { readonly result: SquadResult | undefined; readonly sheet: SquadSheet | undefined },
): PupilScore {
  const { plan, decisions } = input;
  const attendance = getAttendance(pupil, decisions.attendance.get(pupil.id));
  const override = decisions.overrides.get(getOverrideKey({ type: 'pupil', pupil: pupil.id })) ?? null;
  const openFlags = of.sheet?.openFlags.length ?? 0;
  const known = { pupil, attendance, override, openFlags };
  const presence = getPresence(plan, of.result?.slots ?? [], attendance);
  if (attendance.attendance === 'absent' || attendance.attendance === 'excused') {
    return { ...known, ...NO_MARK, state: attendance.attendance, openFlags: 0 };
  }
  if (!of.sheet) return { ...known, ...NO_MARK, state: 'unconfirmed' };
  const sumInput = getSumInput(of.sheet, presence, override);
  const byRule = addByRule(sumInput);
  const sum = byRule[plan.orderRule];
  const percent = findPercent(sum.points, sum.max);
  const unconfirmed = countUnconfirmed(sumInput);
  return {
    ...known,
    state: unconfirmed > 0 || openFlags > 0 ? 'unconfirmed' : 'confirmed',
    sum,
    byRule,
    percent,
    scale: findScaleMark(percent, plan.scale),
    slots: sumInput.slots.map(({ slot }) => slot),
    notes: presence.notes,
    unconfirmed,
  };
}

const NO_MARK = {
  sum: null,
  byRule: null,
  percent: null,
  scale: null,
  slots: [],
  notes: [],
  unconfirmed: 0,
} as const;

function getSumInput(sheet: SquadSheet, presence: Presence, override: Override | null): SumInput {
  return {
    slots: sheet.slots.filter(({ slot }) => presence.slots.has(slot)),
    criteria: sheet.criteria,
    overrides: [
      ...(sheet.override ? [{ of: 'squad' as const, override: sheet.override }] : []),
      ...(override ? [{ of: 'pupil' as const, override }] : []),
    ],
  };
}

function addByRule(input: SumInput): SumByRule {
  const sums = ORDER_RULES.map((rule) => [rule, addPoints(input, rule)] as const);
  return Object.fromEntries(sums) as SumByRule;
}

function countUnconfirmed({ slots, criteria }: SumInput): number {
  const clips = slots.flatMap(({ clip }) => clip?.criteria ?? []).filter(({ confirmed }) => !confirmed);
  return clips.length + criteria.filter(({ decided }) => decided === null).length;
}
