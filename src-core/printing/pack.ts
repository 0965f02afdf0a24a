import * as z from 'zod';
import type { Plan } from '../lesson/plan.ts';
import type { Pupil } from '../lesson/roster.ts';
import { buildCluePages, type CluePage } from './clue-cards.ts';
import type { PrintProblem } from './print-problem.ts';
import { buildRouteKeys, type RouteKey } from './route-key.ts';
import {
  buildLabelPages,
  buildSquadSheets,
  type LabelPage,
  type RouteList,
  type SquadSheet,
} from './squad-sheet.ts';
import { buildStationCards, type StationCard } from './station-card.ts';
import { type AnswerKey, type BriefingSheet, buildAnswerKeys, buildBriefingSheet } from './teacher-sheets.ts';

/** The parts of the print pack, in the order that they are printed in: the teacher's own sheets first. */
export const PACK_PARTS = ['briefing', 'key', 'answers', 'cards', 'clues', 'squads', 'labels'] as const;

/** One part of the print pack. */
export type PackPart = (typeof PACK_PARTS)[number];

/** What one page of the print pack holds. */
export type PackPage =
  | BriefingSheet
  | RouteKey
  | AnswerKey
  | StationCard
  | CluePage
  | SquadSheet
  | RouteList
  | LabelPage;

/** How a pack is asked for. */
export const packOrderSchema = z.strictObject({
  parts: z.array(z.enum(PACK_PARTS)).min(1).max(PACK_PARTS.length),
  paper: z.enum(['a4', 'letter']),
  /** Without colours: pinnies are greys, and told apart by pattern and name as always. */
  isGrey: z.boolean(),
});

/** How a pack is asked for; see {@link packOrderSchema}. */
export type PackOrder = z.infer<typeof packOrderSchema>;

/** The pages of one part. */
export interface PackSection {
  readonly part: PackPart;
  readonly pages: readonly PackPage[];
}

/** The pages of the parts asked for, in the pack's own order, and what the plan lacks for them. */
export function buildPack(
  plan: Plan,
  pupils: readonly Pupil[],
  { parts, isGrey }: Pick<PackOrder, 'parts' | 'isGrey'>,
): { readonly sections: readonly PackSection[]; readonly problems: readonly PrintProblem[] } {
  const clues = buildCluePages(plan, isGrey);
  const pages: Readonly<Record<PackPart, () => readonly PackPage[]>> = {
    briefing: () => [buildBriefingSheet(plan)],
    key: () => buildRouteKeys(plan, pupils, isGrey),
    answers: () => buildAnswerKeys(plan),
    cards: () => buildStationCards(plan),
    clues: () => clues.pages,
    squads: () => buildSquadSheets(plan, pupils, isGrey),
    labels: () => buildLabelPages(plan, isGrey),
  };
  return {
    sections: PACK_PARTS.filter((part) => parts.includes(part)).map((part) => ({
      part,
      pages: pages[part](),
    })),
    problems: parts.includes('clues') ? clues.problems : [],
  };
}
