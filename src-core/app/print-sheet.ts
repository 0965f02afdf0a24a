import type { HandInCheck, HandInProblem } from '../gradebook/hand-in-check.ts';
import type { Plan, SquadCode } from '../lesson/plan.ts';
import type { GradeInput, SheetClip } from '../printing/grade-input.ts';
import { buildGradePages, type GradePages } from '../printing/grade-pages.ts';
import { type SheetOrder, sheetOrderSchema } from '../printing/sheet-order.ts';
import { buildSlipPages, type SlipPages } from '../printing/slip-pages.ts';
import { checkGraded } from './check-graded.ts';
import { findShownMovement } from './clip-evidence.ts';
import { getHolders } from './clip-reading.ts';
import { draftSlips } from './draft-slips.ts';
import type { GradedClip, GradedLesson, GradedSquad } from './graded-lesson.ts';
import { listStrip } from './read-strip.ts';

/** A sheet as pages, before it is drawn. */
export interface PaperDraft {
  readonly order: SheetOrder;
  /** The words of its pages name places and criteria by it. */
  readonly plan: Plan;
  /** Null: refused, see `problems`. */
  readonly pages: SlipPages | GradePages | null;
  /** What stands in a grade sheet; null for slips, which hold no mark. */
  readonly check: HandInCheck | null;
  readonly problems: readonly HandInProblem[];
}

interface DraftOptions {
  readonly evenWithOpenFlags: boolean;
  /** One pupil's slip alone, by the roster's id. */
  readonly pupil?: string | null;
}

/**
 * A sheet of the lesson as it stands. A grade sheet is refused while a flag is open, unless it is asked for all the
 * same; slips go by what is confirmed, and are never refused.
 */
export function draftPaper(
  graded: GradedLesson,
  order: SheetOrder,
  { evenWithOpenFlags, pupil = null }: DraftOptions,
): PaperDraft {
  const { plan } = graded.lesson;
  if (order.kind !== 'grade-sheet') {
    const all = draftSlips(graded, order.kind === 'squad-slips' ? 'squads' : 'pupils');
    const slips = pupil === null ? all : all.filter((slip) => slip.pupil?.id === pupil);
    const pages = buildSlipPages(plan, slips, { kind: order.kind, isGrey: order.isGrey });
    return { order, plan, pages, check: null, problems: [] };
  }
  const check = checkGraded(graded, evenWithOpenFlags);
  if (check.problems.length > 0) return { order, plan, pages: null, check, problems: check.problems };
  return { order, plan, pages: buildGradePages(buildGradeInput(graded, order)), check, problems: [] };
}

/** An order as typed; what is left out is A4, in colour, with stills shown. */
export interface TypedSheetOrder {
  readonly paper?: string;
  readonly grey?: boolean;
  readonly stills?: string;
}

/** Reads an order as typed; else names the part of it that makes no sense. */
export function parseSheetOrder(
  kind: SheetOrder['kind'],
  { paper = 'a4', grey = false, stills = 'shown' }: TypedSheetOrder,
): { readonly order: SheetOrder } | { readonly wrong: 'paper' | 'stills' } {
  const { shape } = sheetOrderSchema;
  const [chosenPaper, chosenStills] = [shape.paper.safeParse(paper), shape.stills.safeParse(stills)];
  if (!chosenPaper.success) return { wrong: 'paper' };
  if (!chosenStills.success) return { wrong: 'stills' };
  return { order: { kind, paper: chosenPaper.data, isGrey: grey, stills: chosenStills.data } };
}

function buildGradeInput({ lesson, squads, flags, score }: GradedLesson, order: SheetOrder): GradeInput {
  const { plan } = lesson;
  return {
    plan,
    score,
    squads: squads.map((squad) => ({
      code: squad.squad.code,
      clips: squad.clips.map((clip) => buildSheetClip(plan, squad, clip)),
    })),
    flags: flags.filter(({ asks }) => asks).map(({ flag, answer }) => ({ flag, answer })),
    unshown: lesson.unshown,
    order,
  };
}

function buildSheetClip(plan: Plan, { squad }: GradedSquad, clip: GradedClip): SheetClip {
  const { reading, time, assignment, path } = clip;
  const station = assignment.slot === null ? null : (squad.route[assignment.slot] ?? null);
  return {
    id: reading.id,
    fileName: path.split('/').at(-1) ?? path,
    startMs: time.startMs,
    assignment,
    mayShow: [...new Set([squad.code, ...getHolders(reading), ...listLikely(clip)])],
    strip: listStrip(reading, findShownMovement(reading.evidence, plan, station)?.reps ?? null),
  };
}

/** The squads that a clip's flags say it may show, as long as the teacher has not cleared them. */
function listLikely({ flags }: GradedClip): readonly SquadCode[] {
  return flags.flatMap(({ flag, answer }) => {
    if (answer?.settled === 'cleared') return [];
    if (flag.code === 'other-squad') return [flag.likely];
    return flag.code === 'same-footage' && flag.likeSquad !== null ? [flag.likeSquad] : [];
  });
}
