import type { EvidenceProblem } from '../evidence/evidence-problem.ts';
import type { CsvProblem } from '../gradebook/csv.ts';
import type { HandInProblem } from '../gradebook/hand-in-check.ts';
import type { BundleProblem } from '../gradebook/oneroster/bundle-problem.ts';
import type { LessonProblem, LooseEnd } from '../lesson/lesson-problem.ts';
import type { PlanningProblem } from '../lesson/planning-problem.ts';
import type { ArchiveProblem } from '../lesson-file/archive-manifest.ts';
import type { JournalProblem } from '../lesson-file/journal-file.ts';
import type { MediaProblem } from '../media/media-problem.ts';
import type { OverwrittenProblem, StorageProblem } from '../platform/storage-problem.ts';
import type { PrintProblem } from '../printing/print-problem.ts';
import type { CallProblem } from './call-problem.ts';
import type { ClipsProblem } from './clips-problem.ts';
import type { QueueProblem } from './queue-problem.ts';

/** Why a lesson cannot be opened, or what is wrong with what was opened. */
export type OpenProblem =
  | LessonProblem
  | JournalProblem
  | StorageProblem
  | { readonly code: 'lesson-without-plan' }
  | { readonly code: 'lesson-without-roster' };

/** Why a decision was not recorded. */
export type MarkProblem =
  | JournalProblem
  | StorageProblem
  | OverwrittenProblem
  /** What was decided cannot stand in a journal; `path` and `expected` as in the plan's problems. */
  | {
      readonly code: 'decision-invalid';
      readonly path: string;
      readonly expected: string;
      readonly detail: string | null;
    }
  | { readonly code: 'nothing-to-undo' }
  | { readonly code: 'nothing-to-redo' };

/** Why clips were not brought into a lesson. */
export interface BringProblem {
  readonly code: 'disk-too-small';
  readonly neededBytes: number;
  readonly freeBytes: number;
}

/** Why looking back shows less than there is. */
export type LookBackProblem =
  /** Figures that could not be kept are shown all the same, and added up again the next time. */
  | StorageProblem
  | { readonly code: 'no-lessons-found'; readonly paths: readonly string[] }
  /** It cannot be opened, so only what was kept of its figures before, if anything, is shown. */
  | { readonly code: 'lesson-left-out'; readonly path: string; readonly because: OpenProblem };

/** Everything that can go wrong in an expected way, in any stage: what the faces must have words for. */
export type Problem =
  | OpenProblem
  | LooseEnd
  | PlanningProblem
  | ClipsProblem
  | MediaProblem
  | EvidenceProblem
  | MarkProblem
  | BringProblem
  | LookBackProblem
  | ArchiveProblem
  | HandInProblem
  | CsvProblem
  | PrintProblem
  | BundleProblem
  | QueueProblem
  | CallProblem;

/** The problem with this code. */
export type ProblemOf<Code extends Problem['code']> = Extract<Problem, { code: Code }>;
