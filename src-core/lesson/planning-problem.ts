import type { RosterImportProblem } from './roster/roster-import-problem.ts';
import type { RouteProblem } from './routes/route-problem.ts';
import type { SquadsProblem } from './squads/squads-problem.ts';
import type { StandardsProblem } from './standards.ts';

/** What is wrong with a teacher's own library of exercises; nothing of the file is taken then. */
export type LibraryProblem =
  | { readonly code: 'library-not-json'; readonly line: number; readonly column: number }
  | { readonly code: 'library-not-ours' }
  | { readonly code: 'library-newer'; readonly version: number; readonly newest: number }
  | {
      readonly code: 'library-field';
      readonly path: string;
      readonly expected: string;
      readonly detail: string | null;
    }
  | { readonly code: 'library-code-twice'; readonly path: string; readonly value: string };

/** Why a lesson was not made or copied, or a version not found. */
export type LessonCopyProblem =
  /** The folder that the lesson should go to is there already. */
  | { readonly code: 'lesson-folder-exists'; readonly path: string }
  | { readonly code: 'version-unknown'; readonly version: string };

/** Whatever can go wrong while a lesson is being planned, beside what is wrong with the plan itself. */
export type PlanningProblem =
  | RouteProblem
  | SquadsProblem
  | StandardsProblem
  | LibraryProblem
  | LessonCopyProblem
  | RosterImportProblem;
