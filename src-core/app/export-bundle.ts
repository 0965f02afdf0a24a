import type { HandInCheck, HandInProblem } from '../gradebook/hand-in-check.ts';
import { type BundleFiles, type BundleOrder, buildBundle } from '../gradebook/oneroster/build-bundle.ts';
import { BUNDLE_RULES, type BundleFault, type RuleCheck } from '../gradebook/oneroster/bundle-fault.ts';
import type { BundleProblem } from '../gradebook/oneroster/bundle-problem.ts';
import { type Bundle, checkBundle } from '../gradebook/oneroster/check-bundle.ts';
import { describeSchool, type SchoolDescription } from '../gradebook/oneroster/describe-school.ts';
import { checkGraded } from './check-graded.ts';
import type { GradedLesson } from './graded-lesson.ts';

export { checkBundle } from '../gradebook/oneroster/check-bundle.ts';

/** A set of marks ready to be written, and what stands in it. */
export interface BundleDraft {
  /** Null: refused, see `problems`. */
  readonly files: BundleFiles | null;
  readonly check: HandInCheck;
  readonly problems: readonly (HandInProblem | BundleProblem)[];
  /** The set that it is built on; null where flags refused it. */
  readonly school: SchoolDescription | null;
  /** Every rule with what breaks it in the set to be written; null where none came about that could be held to them. */
  readonly rules: readonly RuleCheck[] | null;
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
 * school's set cannot be built on. Faults of the school's set in tables that are not carried over change nothing.
 */
export function draftBundle(graded: GradedLesson, order: MarksOrder): BundleDraft {
  const { lesson, score } = graded;
  const check = checkGraded(graded, order.evenWithOpenFlags);
  const nothing = { files: null, check, rules: null };
  if (check.problems.length > 0) return { ...nothing, school: null, problems: check.problems };
  const found = checkBundle(order.school);
  const school = describeSchool(found, new Set(score.pupils.map(({ pupil }) => pupil.id)), order.classId);
  if (found.version === null) return { ...nothing, school, problems: found.faults };
  const built = buildBundle(lesson.plan, score, { ...order, school: found });
  const { problems } = built;
  if (built.ok) return { files: built.value, check, problems, school, rules: listRules([]) };
  const faults = problems.filter((problem): problem is BundleFault => problem.code === 'bundle-rule-broken');
  return { ...nothing, school, problems, rules: faults.length > 0 ? listRules(faults) : null };
}

function listRules(faults: readonly BundleFault[]): readonly RuleCheck[] {
  return BUNDLE_RULES.map((rule) => ({ rule, faults: faults.filter((fault) => fault.rule === rule) }));
}
