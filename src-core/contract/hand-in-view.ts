import type { AccountSheet } from '../gradebook/account-sheet.ts';
import type { GradeSheet } from '../gradebook/grade-sheet.ts';
import type { RuleCheck } from '../gradebook/oneroster/bundle-fault.ts';
import type { SchoolDescription } from '../gradebook/oneroster/describe-school.ts';

/** One file of a set of marks, as it would be written. */
export interface SetFileView {
  /** `results.csv`. */
  readonly name: string;
  /** Records after the heading. */
  readonly rows: number;
  readonly text: string;
}

/** Exactly what would be written, by the kind of hand-in. */
export type HandInPreview =
  | { readonly kind: 'csv'; readonly sheet: GradeSheet; readonly text: string }
  /** A workbook of two sheets: the marks, and where each point came from. */
  | { readonly kind: 'xlsx'; readonly sheet: GradeSheet; readonly account: AccountSheet }
  | {
      readonly kind: 'oneroster';
      /** Null: none came about, see the problems. */
      readonly files: readonly SetFileView[] | null;
      /** Null: nothing came about that could be held to the rules. */
      readonly rules: readonly RuleCheck[] | null;
      /** The school's set that it is built on; null where none was named or it cannot be read. */
      readonly school: (SchoolDescription & { readonly name: string }) | null;
    };

/** One slip for a squad or pupil, in the sentences that would stand on the paper. */
export interface SlipView {
  /** Whom it is for: `Odda, Teal squad`. */
  readonly name: string;
  /** Said in the place of all else to a pupil who was not there; null for all others. */
  readonly instead: string | null;
  readonly well: readonly string[];
  readonly next: readonly string[];
  /** Null: nothing waits to be confirmed. */
  readonly waiting: string | null;
}
