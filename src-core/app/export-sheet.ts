import { type AccountSheet, type AccountWords, buildAccountSheet } from '../gradebook/account-sheet.ts';
import { buildCsv, type CsvProblem } from '../gradebook/csv.ts';
import { buildGradeSheet, type GradeSheet, type SheetColumn } from '../gradebook/grade-sheet.ts';
import type { HandInCheck, HandInProblem } from '../gradebook/hand-in-check.ts';
import type { JournalAct } from '../marking/journal-event.ts';
import { checkGraded } from './check-graded.ts';
import type { GradedLesson } from './graded-lesson.ts';

export type { HandInCheck } from '../gradebook/hand-in-check.ts';
export { checkGraded } from './check-graded.ts';

/** A grade sheet ready to be written, and what stands in it. */
export interface SheetDraft {
  /** Null: refused, see `problems`. */
  readonly text: string | null;
  /** The same as a table; null where refused. */
  readonly sheet: GradeSheet | null;
  readonly check: HandInCheck;
  readonly problems: readonly (HandInProblem | CsvProblem)[];
}

/** How a sheet is asked for. */
export interface SheetOrder {
  /** Write although flags are open; the sheet says so. */
  readonly evenWithOpenFlags: boolean;
  /** Columns for one destination; the plan's where null. */
  readonly columns: readonly SheetColumn[] | null;
}

/** The grade sheet as CSV text. Refused while a flag is open, unless it is asked for all the same. */
export function draftSheet(graded: GradedLesson, order: SheetOrder): SheetDraft {
  const { lesson, score } = graded;
  const check = checkGraded(graded, order.evenWithOpenFlags);
  if (check.problems.length > 0) return { text: null, sheet: null, check, problems: check.problems };
  const sheet = buildGradeSheet(lesson.plan, score, order.columns ? { columns: order.columns } : {});
  const { text, problems } = buildCsv(sheet);
  return { text, sheet, check, problems };
}

/** Where each point of the sheet came from, for the workbook's second sheet. */
export function draftAccount({ lesson, score }: GradedLesson, words: AccountWords): AccountSheet {
  return buildAccountSheet(lesson.plan, score, words);
}

/** What the journal keeps of a hand-in: the files, and what was open in them. */
export function buildHandInAct(files: readonly string[], { counts }: HandInCheck): JournalAct {
  const { confirmed, unconfirmed, absent, excused } = counts.pupils;
  return {
    kind: 'handed-in',
    files: [...files],
    pupils: confirmed + unconfirmed + absent + excused,
    unconfirmed,
    openFlags: counts.openFlags,
  };
}
