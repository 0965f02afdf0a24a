import { checkHandIn, type HandInCheck, type HandInProblem } from '../gradebook/hand-in-check.ts';
import { type BundleFiles, type BundleOrder, buildBundle } from '../gradebook/oneroster/build-bundle.ts';
import type { BundleProblem } from '../gradebook/oneroster/bundle-problem.ts';
import { type Bundle, checkBundle } from '../gradebook/oneroster/check-bundle.ts';
import type { GradedLesson } from './graded-lesson.ts';

export { checkBundle } from '../gradebook/oneroster/check-bundle.ts';

/** A set of marks ready to be written, and what stands in it. */
export interface BundleDraft {
  /** Null: refused, see `problems`. */
  readonly files: BundleFiles | null;
  readonly check: HandInCheck;
  readonly problems: readonly (HandInProblem | BundleProblem)[];
}

/** How a set of marks is asked for. */
export interface MarksOrder extends Omit<BundleOrder, 'school'> {
  /** The school's set as it was read. */
  readonly school: Bundle;
  /** Write although flags are open; every result says that it is partial. */
  readonly evenWithOpenFlags: boolean;
}

/**
 * The marks as a OneRoster set. Refused while a flag is open, unless it is asked for all the same, and where the
 * school's set cannot be built on. Slips of the school's set in tables that are not carried over change nothing.
 */
export function draftBundle({ lesson, score }: GradedLesson, order: MarksOrder): BundleDraft {
  const check = checkHandIn(score, order.evenWithOpenFlags);
  if (check.problems.length > 0) return { files: null, check, problems: check.problems };
  const school = checkBundle(order.school);
  if (school.version === null) return { files: null, check, problems: school.slips };
  const built = buildBundle(lesson.plan, score, { ...order, school });
  return { files: built.ok ? built.value : null, check, problems: built.problems };
}
