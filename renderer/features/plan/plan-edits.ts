import type { Plan } from '../../../src-core/lesson/plan.ts';

/** What a number may be, for the field it is typed in. */
export interface NumberRange {
  readonly min: number;
  readonly max: number;
  readonly step: number;
}

/** Ranges of the tolerances, as the plan's format has them. */
export const RANGES = {
  togetherSeconds: { min: 0.05, max: 5, step: 0.05 },
  clockDoubtSeconds: { min: 1, max: 3600, step: 1 },
  periodGraceMinutes: { min: 0, max: 60, step: 1 },
  shortestClipSeconds: { min: 0, max: 60, step: 0.5 },
  awardPoints: { min: 0, max: 100, step: 0.5 },
} as const satisfies Readonly<Record<string, NumberRange>>;

/** The plan with one tolerance changed. */
export function changeTolerance(
  { tolerances }: Plan,
  name: keyof Plan['tolerances'],
  value: number,
): Partial<Plan> {
  return { tolerances: { ...tolerances, [name]: value } };
}

/** The plan with one end of a period changed. */
export function changePeriod(
  { periods }: Plan,
  code: string,
  change: { readonly start?: string; readonly end?: string },
): Partial<Plan> {
  return { periods: periods.map((period) => (period.code === code ? { ...period, ...change } : period)) };
}

/** The plan with another period as the lesson's. */
export function changeLessonPeriod({ lesson }: Plan, period: string): Partial<Plan> {
  return { lesson: { ...lesson, period } };
}

/** The plan with other points for a clip that meets every criterion. */
export function changeAward({ rubric }: Plan, points: number): Partial<Plan> {
  return { rubric: { ...rubric, award: { rule: 'all-or-nothing', points } } };
}
