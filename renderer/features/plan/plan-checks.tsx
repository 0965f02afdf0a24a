import { useEffect, useState } from 'react';
import type { DeskClient } from '../../../src-core/contract/desk-client.ts';
import type { Problem } from '../../../src-core/contract/problem.ts';
import type { Plan } from '../../../src-core/lesson/plan.ts';
import type { LessonNames } from '../../client/lesson-names.ts';
import { CHECKS, PLAN } from '../../text/english/plan-step.ts';
import { describeProblem } from '../../text/english/problems.ts';
import { Glyph } from '../../ui/glyph.tsx';
import { Sheet } from '../../ui/sheet.tsx';

/** What the plan was checked for: each problem with the way to its field, then what holds. */
export function PlanChecks({
  client,
  plan,
  names,
  onGo,
}: {
  readonly client: DeskClient;
  readonly plan: Plan;
  readonly names: LessonNames;
  /** Leads to the field at a path of plan.json, such as `stations[2].reps`. */
  readonly onGo: (path: string) => void;
}) {
  const [problems, setProblems] = useState<readonly Problem[] | null>(null);
  useEffect(() => {
    let isWanted = true;
    void client.request('checkPlan', { plan }).then((reply) => {
      if (isWanted) setProblems(reply.ok ? reply.value.problems : reply.problems);
    });
    return () => {
      isWanted = false;
    };
  }, [client, plan]);
  const codes = new Set<string>(problems?.map(({ code }) => code));
  return (
    <Sheet label={PLAN.checks} className="chk">
      <ul aria-live="polite">
        {problems === null && <li>{PLAN.checking}</li>}
        {problems?.map((problem) => {
          const { what, todo } = describeProblem(problem, names);
          return (
            <li key={what} className="need">
              <Glyph name="warn" />
              <span>
                <b>{what}</b> {todo}
              </span>
              {'path' in problem && (
                <button type="button" className="lk push" onClick={() => onGo(problem.path)}>
                  {PLAN.goThere}
                  <span className="vh">: {what}</span>
                </button>
              )}
            </li>
          );
        })}
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
