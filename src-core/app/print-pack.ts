import type { Plan } from '../lesson/plan.ts';
import type { Pupil } from '../lesson/roster.ts';
import { buildPack, PACK_PARTS, type PackOrder, type PackPart, type PackSection } from '../printing/pack.ts';
import type { PrintProblem } from '../printing/print-problem.ts';

/** The print pack of a lesson as pages, before it is drawn. */
export interface PackDraft extends Pick<PackOrder, 'paper' | 'isGrey'> {
  readonly title: string;
  readonly sections: readonly PackSection[];
  readonly problems: readonly PrintProblem[];
}

/** What a lesson's pack holds. */
export function draftPack(
  { plan, pupils }: { readonly plan: Plan; readonly pupils: readonly Pupil[] },
  order: PackOrder,
): PackDraft {
  const { title, className } = plan.lesson;
  const { paper, isGrey } = order;
  return { ...buildPack(plan, pupils, order), paper, isGrey, title: `${title}, ${className}` };
}

/** Reads parts as typed, `cards,clues`; null where one is not a part of the pack. */
export function parsePackParts(list: string): PackPart[] | null {
  const named = list.split(',').map((part) => part.trim().toLowerCase());
  const parts = PACK_PARTS.filter((part) => named.includes(part));
  return named.every((name) => PACK_PARTS.some((part) => part === name)) ? parts : null;
}
