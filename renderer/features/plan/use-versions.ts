import { useCallback, useEffect, useState } from 'react';
import type { CallOutput } from '../../../src-core/contract/calls.ts';
import type { PlanChange } from '../../../src-core/lesson/compare-plans.ts';
import type { Plan } from '../../../src-core/lesson/plan.ts';
import type { LessonDesk } from '../../client/lesson-desk.ts';

type Versions = CallOutput<'listVersions'>['versions'];

/** The earlier states of the open lesson's plan, newest first; looked up again whenever the plan on the disk changes. */
export function useVersions(desk: LessonDesk, planVersion: string) {
  const [versions, setVersions] = useState<Versions>([]);
  const { client, lesson } = desk;
  // biome-ignore lint/correctness/useExhaustiveDependencies: another plan on the disk means one earlier state more
  useEffect(() => {
    let isWanted = true;
    void client.request('listVersions', { lesson }).then((reply) => {
      if (isWanted && reply.ok) setVersions(reply.value.versions);
    });
    return () => {
      isWanted = false;
    };
  }, [client, lesson, planVersion]);
  /** What is different now from an earlier state; null: it could not be told, and why is reported. */
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is different now changes with the plan on the disk
  const compare = useCallback(
    async (version: string): Promise<readonly PlanChange[] | null> => {
      const reply = await client.request('comparePlans', { lesson, from: version, to: null });
      if (!reply.ok) desk.report(reply.problems);
      return reply.ok ? reply.value.changes : null;
    },
    [client, lesson, desk, planVersion],
  );
  const read = useCallback(
    async (version: string): Promise<Plan | null> => {
      const reply = await client.request('readVersion', { lesson, version });
      if (!reply.ok) desk.report(reply.problems);
      return reply.ok ? reply.value.plan : null;
    },
    [client, lesson, desk],
  );
  return { versions, compare, read };
}
