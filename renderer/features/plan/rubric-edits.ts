import type { Plan } from '../../../src-core/lesson/plan.ts';
import type { PlanEdit } from './plan-edit.ts';

/** What a clip is marked on. */
export type ClipCriterion = Plan['rubric']['clip'][number];

/** What a squad as a whole is marked on. */
export type SquadCriterion = Plan['rubric']['squad'][number];

/** One step of the scale. */
export type ScaleStep = Plan['scale'][number];

/** Another step's share under the lowest one, in per cent. */
const STEP_DOWN = 15;

/** A short code that none of the list has: the wish itself, or with a number. */
export function findFreeShortCode(items: readonly { readonly code: string }[], wish: string): string {
  const base =
    wish
      .toLowerCase()
      .normalize('NFKD')
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-+|-+$/g, '')
      .slice(0, 28) || 'own';
  const taken = new Set(items.map(({ code }) => code));
  const numbered = items.map((_, at) => `${base}-${at + 2}`);
  return [base, ...numbered].find((code) => !taken.has(code)) ?? `${base}-0`;
}

/** One more criterion of a clip, judged by eye. */
export function addClipCriterion(label: string): PlanEdit {
  return ({ rubric }) => {
    const code = findFreeShortCode([...rubric.clip, ...rubric.squad], label);
    const criterion: ClipCriterion = { code, label, checks: 'judgement', points: 1, standards: [] };
    return { rubric: { ...rubric, clip: [...rubric.clip, criterion] } };
  };
}

/** A criterion of a clip with some fields otherwise. */
export function changeClipCriterion(code: string, change: Partial<ClipCriterion>): PlanEdit {
  return ({ rubric }) => ({ rubric: { ...rubric, clip: changeByCode(rubric.clip, code, change) } });
}

/** Without a criterion of a clip; the last one stays. */
export function removeClipCriterion(code: string): PlanEdit {
  return ({ rubric }) =>
    rubric.clip.length < 2
      ? {}
      : { rubric: { ...rubric, clip: rubric.clip.filter((one) => one.code !== code) } };
}

/** One more criterion of a squad, worth two points. */
export function addSquadCriterion(label: string): PlanEdit {
  return ({ rubric }) => {
    const code = findFreeShortCode([...rubric.clip, ...rubric.squad], label);
    const criterion: SquadCriterion = { code, label, maxPoints: 2, standards: [] };
    return { rubric: { ...rubric, squad: [...rubric.squad, criterion] } };
  };
}

/** A criterion of a squad with some fields otherwise. */
export function changeSquadCriterion(code: string, change: Partial<SquadCriterion>): PlanEdit {
  return ({ rubric }) => ({ rubric: { ...rubric, squad: changeByCode(rubric.squad, code, change) } });
}

/** Without a criterion of a squad. */
export function removeSquadCriterion(code: string): PlanEdit {
  return ({ rubric }) => ({ rubric: { ...rubric, squad: rubric.squad.filter((one) => one.code !== code) } });
}

/** Another way from criteria met to a clip's points. */
export function changeAwardRule(rule: Plan['rubric']['award']['rule']): PlanEdit {
  return ({ rubric }) => {
    if (rule === rubric.award.rule) return {};
    const award = rule === 'sum' ? { rule } : { rule, points: 1 };
    return { rubric: { ...rubric, award } };
  };
}

/** Other points for a clip that meets every criterion. */
export function changeAward(points: number): PlanEdit {
  return ({ rubric }) => ({ rubric: { ...rubric, award: { rule: 'all-or-nothing', points } } });
}

/** One more mark under the last of the scale. */
export const addScaleStep: PlanEdit = ({ scale }) => {
  const last = scale.at(-1);
  const fromPercent = last ? Math.max(0, last.fromPercent - STEP_DOWN) : 85;
  return { scale: [...scale, { mark: String(Math.max(1, 4 - scale.length)), fromPercent }] };
};

/** A step of the scale, by its place, with some fields otherwise. */
export function changeScaleStep(at: number, change: Partial<ScaleStep>): PlanEdit {
  return ({ scale }) => ({ scale: scale.map((step, each) => (each === at ? { ...step, ...change } : step)) });
}

/** Without a step of the scale. */
export function removeScaleStep(at: number): PlanEdit {
  return ({ scale }) => ({ scale: scale.filter((_, each) => each !== at) });
}

/** More standards that criteria can be tagged with; those the plan has already stay as they are. */
export function addStandards(standards: Plan['standards']): PlanEdit {
  return (plan) => {
    const known = new Set(plan.standards.map(({ code }) => code));
    return { standards: [...plan.standards, ...standards.filter(({ code }) => !known.has(code))] };
  };
}

/** Without a standard, in the list and on every criterion. */
export function removeStandard(code: string): PlanEdit {
  return ({ standards, rubric }) => {
    const untag = <Item extends { readonly standards: string[] }>(item: Item): Item => ({
      ...item,
      standards: item.standards.filter((tag) => tag !== code),
    });
    return {
      standards: standards.filter((standard) => standard.code !== code),
      rubric: { ...rubric, clip: rubric.clip.map(untag), squad: rubric.squad.map(untag) },
    };
  };
}

/** Puts a standard's tag on a criterion, or takes it off. */
export function toggleStandard(criterion: string, standard: string): PlanEdit {
  return ({ rubric }) => {
    const toggle = <Item extends { readonly code: string; readonly standards: string[] }>(
      item: Item,
    ): Item => {
      if (item.code !== criterion) return item;
      const isTagged = item.standards.includes(standard);
      const standards = isTagged
        ? item.standards.filter((tag) => tag !== standard)
        : [...item.standards, standard];
      return { ...item, standards };
    };
    return { rubric: { ...rubric, clip: rubric.clip.map(toggle), squad: rubric.squad.map(toggle) } };
  };
}

function changeByCode<Item extends { readonly code: string }>(
  items: readonly Item[],
  code: string,
  change: Partial<Item>,
): Item[] {
  return items.map((item) => (item.code === code ? { ...item, ...change } : item));
}
