import type { Plan } from '../../../src-core/lesson/plan.ts';
import type { PlanEdit } from './plan-edit.ts';
import { readMinutes, writeMinutes } from './slot-times.ts';

/** What a number may be, for the field it is typed in. */
export interface NumberRange {
  readonly min: number;
  readonly max: number;
  readonly step: number;
}

/** Ranges of the plan's numbers, as its format has them. */
export const RANGES = {
  togetherSeconds: { min: 0.05, max: 5, step: 0.05 },
  clockDoubtSeconds: { min: 1, max: 3600, step: 1 },
  periodGraceMinutes: { min: 0, max: 60, step: 1 },
  shortestClipSeconds: { min: 0, max: 60, step: 0.5 },
  points: { min: 0, max: 100, step: 0.5 },
  reps: { min: 1, max: 200, step: 1 },
  cycleSeconds: { min: 0.2, max: 20, step: 0.1 },
  minutes: { min: 0, max: 60, step: 1 },
  seed: { min: 0, max: 999_999, step: 1 },
  metres: { min: 0, max: 5000, step: 1 },
  percent: { min: 0, max: 100, step: 1 },
  revision: { min: 1, max: 999, step: 1 },
} as const satisfies Readonly<Record<string, NumberRange>>;

/** Other facts of the lesson. */
export function changeLesson(change: Partial<Plan['lesson']>): PlanEdit {
  return ({ lesson }) => ({ lesson: { ...lesson, ...change } });
}

/** One of the plan's tolerances at another value, in its own unit. */
export function changeTolerance(name: keyof Plan['tolerances'], value: number): PlanEdit {
  return ({ tolerances }) => ({ tolerances: { ...tolerances, [name]: value } });
}

/** Other minutes for warming up or clearing up. */
export function changeTiming(change: Partial<Plan['timing']>): PlanEdit {
  return ({ timing }) => ({ timing: { ...timing, ...change } });
}

/** One end of a period changed. */
export function changePeriod(
  code: string,
  change: { readonly start?: string; readonly end?: string },
): PlanEdit {
  return ({ periods }) => ({
    periods: periods.map((period) => (period.code === code ? { ...period, ...change } : period)),
  });
}

/** One more period after the last of the day, ten minutes after it and as long. */
export const addPeriod: PlanEdit = ({ periods }) => {
  const last = periods.at(-1);
  const codes = new Set(periods.map(({ code }) => code));
  const code = periods.map((_, at) => `p${at + 2}`).find((each) => !codes.has(each)) ?? 'p1';
  const start = last ? readMinutes(last.end) + 10 : 9 * 60;
  const length = last ? Math.max(10, readMinutes(last.end) - readMinutes(last.start)) : 45;
  return {
    periods: [...periods, { code, start: writeMinutes(start), end: writeMinutes(start + length) }],
  };
};

/** Without a period; the lesson's own stays. */
export function removePeriod(code: string): PlanEdit {
  return ({ periods, lesson }) =>
    lesson.period === code ? {} : { periods: periods.filter((period) => period.code !== code) };
}

/** The lists of sentences in the briefing. */
export type BriefingList = 'rules' | 'boundaries' | 'cautions';

/** A list of the briefing with one sentence otherwise, by its place; empty takes it out, a new place adds it. */
export function changeSentence(list: BriefingList, at: number, sentence: string): PlanEdit {
  return ({ briefing }) => ({
    briefing: { ...briefing, [list]: replaceAt(briefing[list], at, sentence === '' ? null : sentence) },
  });
}

/** A word to learn with its meaning, by its place; null takes it out, a new place adds it. */
export function changeWord(at: number, word: Plan['briefing']['words'][number] | null): PlanEdit {
  return ({ briefing }) => ({ briefing: { ...briefing, words: replaceAt(briefing.words, at, word) } });
}

/** The objective of the lesson; empty: none. */
export function changeObjective(objective: string): PlanEdit {
  return ({ briefing: { objective: _, ...briefing } }) => ({
    briefing: objective === '' ? briefing : { ...briefing, objective },
  });
}

function replaceAt<Item>(items: readonly Item[], at: number, item: Item | null): Item[] {
  return [...items.slice(0, at), ...(item === null ? [] : [item]), ...items.slice(at + 1)];
}
