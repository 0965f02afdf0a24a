import { useEffect, useState } from 'react';
import type { DeskClient } from '../../../src-core/contract/desk-client.ts';
import type { LessonId } from '../../../src-core/contract/desk-view.ts';
import type { Problem } from '../../../src-core/contract/problem.ts';
import type { Plan } from '../../../src-core/lesson/plan.ts';

/** All that is wrong with a plan as edited, asked anew with each edit; null until it was told for the first time. */
export function usePlanProblems(client: DeskClient, lesson: LessonId, plan: Plan): readonly Problem[] | null {
  const [problems, setProblems] = useState<readonly Problem[] | null>(null);
  useEffect(() => {
    let isWanted = true;
    void client.request('checkPlan', { lesson, plan }).then((reply) => {
      if (isWanted) setProblems(reply.ok ? reply.value.problems : reply.problems);
    });
    return () => {
      isWanted = false;
    };
  }, [client, lesson, plan]);
  return problems;
}
