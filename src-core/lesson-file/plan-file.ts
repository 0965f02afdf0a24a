import type { PlanProblem } from '../lesson/lesson-problem.ts';
import { type Plan, planSchema } from '../lesson/plan.ts';
import { fail, type Outcome, succeed } from '../platform/outcome.ts';
import { findJsonError } from './json-error.ts';
import { moveCluesOn } from './move-clues-on.ts';
import { readSchemaProblems } from './schema-problem.ts';
import { type UpgradeStep, upgradeContent } from './upgrade.ts';

/** The version of plan.json that is written, and the newest that is read. */
export const PLAN_VERSION = 2;

/**
 * Steps from older versions, by the version they start from. A new version adds its step here and a frozen example of
 * the old one beside the tests.
 */
export const PLAN_UPGRADES: Readonly<Record<number, UpgradeStep>> = { 1: moveCluesOn };

/**
 * Reads plan.json. Fails with every problem found, each with its path; with `plan-not-json` and the place where the
 * text stops being JSON; with `plan-not-ours` where it is no plan; with `plan-newer` where a newer program wrote it.
 * Only the shape is checked; what routes and codes mean together is `lesson/check-plan.ts`'s to judge.
 */
export function parsePlan(text: string): Outcome<Plan, PlanProblem> {
  const plain = text.replace(/^\uFEFF/, '');
  let content: unknown;
  try {
    content = JSON.parse(plain);
  } catch {
    const { line, column } = findJsonError(plain) ?? { line: 1, column: 1 };
    return fail({ code: 'plan-not-json', line, column });
  }
  return readContent(content);
}

/** plan.json's text for a plan: keys in the schema's order, two spaces, a line end at the end. */
export function buildPlanText(plan: Plan): string {
  return `${JSON.stringify(planSchema.parse(plan), null, 2)}\n`;
}

function readContent(content: unknown): Outcome<Plan, PlanProblem> {
  if (!isGroup(content) || content.format !== 'routemark-plan') return fail({ code: 'plan-not-ours' });
  const { version } = content;
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) {
    return fail({ code: 'plan-field', path: 'version', expected: 'version', detail: String(PLAN_VERSION) });
  }
  if (version > PLAN_VERSION) return fail({ code: 'plan-newer', version, newest: PLAN_VERSION });
  const upgraded = upgradeContent(content, PLAN_VERSION, PLAN_UPGRADES);
  if (!upgraded) throw new Error(`no step leads on from version ${version} of a plan`);
  const parsed = planSchema.safeParse(upgraded);
  if (parsed.success) return succeed(parsed.data);
  return fail(
    ...readSchemaProblems(parsed.error, upgraded).map(
      (problem): PlanProblem => ({ code: 'plan-field', ...problem }),
    ),
  );
}

function isGroup(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
