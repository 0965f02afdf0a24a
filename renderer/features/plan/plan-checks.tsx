import { useRef } from 'react';
import type { Problem } from '../../../src-core/contract/problem.ts';
import { findLooseEnds } from '../../../src-core/lesson/find-loose-ends.ts';
import type { Plan } from '../../../src-core/lesson/plan.ts';
import type { Pupil } from '../../../src-core/lesson/roster.ts';
import type { LessonNames } from '../../client/lesson-names.ts';
import { CHECKS, PLAN } from '../../text/english/plan-step.ts';
import { describeProblem } from '../../text/english/problems.ts';
import { Glyph } from '../../ui/glyph.tsx';
import { useKeys } from '../../ui/keys/use-keys.ts';
import { Sheet } from '../../ui/sheet.tsx';

/** The path of the field that a problem is mended in; empty: the plan as a whole. */
function findField(problem: Problem, { stations }: Plan): string {
  // Its path is the picture's own.
  if (problem.code === 'print-photo-missing')
    return `stations[${stations.findIndex(({ code }) => code === problem.station)}].photo`;
  return 'path' in problem ? problem.path : '';
}

/** What the plan was checked for: what is amiss, each with the way to its field, then what holds. */
export function PlanChecks({
  problems,
  plan,
  pupils,
  names,
  onGo,
}: {
  /** What is wrong with the plan; null: not known yet. */
  readonly problems: readonly Problem[] | null;
  readonly plan: Plan;
  readonly pupils: readonly Pupil[];
  readonly names: LessonNames;
  /** Leads to the field at a path of plan.json, such as `stations[2].reps`. */
  readonly onGo: (path: string) => void;
}) {
  const amiss = [...findLooseEnds(plan, pupils), ...(problems ?? [])].map((problem) => ({
    ...describeProblem(problem, names),
    path: findField(problem, plan),
  }));
  const next = useRef(0);
  useKeys({
    'next-flag': () => {
      const found = amiss[next.current % Math.max(1, amiss.length)];
      if (!found) return false;
      next.current += 1;
      onGo(found.path);
      return true;
    },
  });
  const codes = new Set<string>(problems?.map(({ code }) => code));
  return (
    <Sheet label={PLAN.checks} className="chk">
      <ul aria-live="polite">
        {amiss.map(({ what, todo, path }) => (
          <li key={`${path} ${what}`} className="need">
            <Glyph name="warn" />
            <span>
              <b>{what}</b> {todo}
            </span>
            <button type="button" className="lk push" onClick={() => onGo(path)}>
              {PLAN.goThere}
              <span className="vh">: {what}</span>
            </button>
          </li>
        ))}
        {problems === null && <li>{PLAN.checking}</li>}
        {problems &&
          CHECKS.filter((check) => check.codes.every((code) => !codes.has(code))).map(({ holds }) => (
            <li key={holds}>
              <Glyph name="tick" />
              {holds}
            </li>
          ))}
      </ul>
    </Sheet>
  );
}
